import { z } from 'zod'
import { sheetName } from './sheet-copy.ts'
import { calendarDay, lineText, noteText, requiredLine } from './units.ts'
import { verdict } from './words.ts'

/** One variable of a reference sheet and the values a claim leaves it. */
export const assertion = z.strictObject({
  sheetId: sheetName,
  variable: sheetName,
  values: z.array(sheetName).min(1).max(500),
})

/** What somebody says about the car. Number C1, C2... */
export const claimDraft = z.strictObject({
  /** The claim in the claimant's own words. */
  words: requiredLine,
  who: lineText,
  kind: z.enum(['seller', 'advert', 'plate or badge', 'invoice', 'register', 'owner', 'other']),
  on: calendarDay.nullable(),
  where: lineText,
  /** Number of the claim this one repeats; null when it is a first source. A repeated claim is no second witness. */
  repeats: z.number().int().positive().nullable(),
  /** The question the claim answers and two propositions that exclude each other. */
  question: noteText,
  ifTrue: noteText,
  ifNot: noteText,
  takenAsGiven: noteText,
  verdict,
  /** Strength of the findings for the verdict, in words the examiner stands by. */
  strength: z.enum([
    'not stated',
    'no support',
    'weak',
    'moderate',
    'moderately strong',
    'strong',
    'very strong',
    'extremely strong',
  ]),
  reasons: noteText,
  setAside: noteText,
  wouldSettle: noteText,
  /** What the claim says in the terms of a reference sheet: each of these holds one of its values. Empty: words only. */
  asserts: z.array(assertion).max(20).default([]),
  /**
   * Of a hundred statements such a claimant makes, how many hold; the claim then counts as evidence of that weight. Null:
   * the claim is put to the test and is no evidence itself.
   */
  reliability: z.number().min(1).max(99).nullable().default(null),
  findings: z.array(z.number().int().positive()).max(200),
  exhibits: z.array(z.number().int().positive()).max(200),
})
export const claim = claimDraft.extend({ number: z.number().int().positive() })
export type ClaimDraft = z.infer<typeof claimDraft>
export type Claim = z.infer<typeof claim>
