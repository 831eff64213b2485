import { z } from 'zod'
import { sha256 } from './exhibit.ts'
import { instant, lineText, noteText } from './units.ts'

export const paper = z.enum(['A4', 'Letter'])
export type Paper = z.infer<typeof paper>

/** One issued report, frozen. Editions are numbered 1, 2... and never withdrawn. */
export const edition = z.strictObject({
  number: z.number().int().positive(),
  reportNumber: lineText,
  issuedAt: instant,
  paper,
  /** Why this edition replaces the one before; empty for the first. */
  reason: noteText,
  sha256,
  byteLength: z.number().int().positive(),
  pages: z.number().int().positive(),
  /** Journal row the edition was made from, and that row's hash. */
  journalNumber: z.number().int().nonnegative(),
  journalHash: sha256,
})
export type Edition = z.infer<typeof edition>
