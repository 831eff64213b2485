import type { Photograph } from '../../shared-types/exhibit.ts'

/** One photograph for the worker to look at. */
export interface PhotographWork {
  readonly path: string
  readonly fileName: string
}

export interface Rendering {
  readonly bytes: Uint8Array
  readonly widthPx: number
  readonly heightPx: number
}

/** What the worker found: the photograph but for its hash, and both renderings; or why it is refused, for the user. */
export type PhotographSeen =
  | {
      readonly photograph: Omit<Photograph, 'sha256'>
      readonly thumbnail: Rendering
      readonly report: Rendering
    }
  | { readonly refused: string }

/** Long sides of the renderings, px. */
export const THUMBNAIL_PX = 320
export const REPORT_PX = 1600
/** Quality of the renderings (JPEG, 1 to 100). */
export const RENDERING_QUALITY = 82

/** A picture of more pixels is not decoded. */
export const MOST_PIXELS = 200_000_000
/** A longer file is not read into memory. */
export const MOST_BYTES = 300 * 1024 * 1024
/** A picture that takes longer to decode is given up, ms. */
export const DECODE_LIMIT_MS = 60_000
