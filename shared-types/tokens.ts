import type { HatchName } from './figure.ts'

/** Colours of the two sheets. Contrast against `sheet`: ink 16.7 and 14.2, ink2 7.5 and 7.5, accent 7.2 and 9.2 to 1. */
export const sheets = {
  paper: {
    sheet: '#FBF9F3',
    ink: '#1A1917',
    ink2: '#55514A',
    hairline: '#B9B3A6',
    faint: '#8E887C',
    accent: '#005B7A',
  },
  night: {
    sheet: '#14171A',
    ink: '#E9E4D8',
    ink2: '#ABA79C',
    hairline: '#454A4E',
    faint: '#777A78',
    accent: '#74C4E2',
  },
} as const
export type SheetName = keyof typeof sheets
export type ColourRole = keyof (typeof sheets)['paper']

/** Stroke widths: `px` on screen at 1440 wide, never scaled with the plan; `mm` on the printed page. */
export const lineWeights = {
  inHand: { px: 2.2, mm: 0.5 },
  silhouette: { px: 1.5, mm: 0.42 },
  outline: { px: 1.1, mm: 0.28 },
  shut: { px: 0.9, mm: 0.2 },
  detail: { px: 0.55, mm: 0.12 },
  form: { px: 0.4, mm: 0.075 },
  centre: { px: 0.5, mm: 0.1 },
  station: { px: 0.5, mm: 0.08 },
  leader: { px: 0.6, mm: 0.12 },
} as const
/** Light lines on the night sheet bloom; they are drawn this much thinner. */
export const NIGHT_LINE_FACTOR = 0.92

/**
 * One family of parallel strokes. Angle in degrees anticlockwise from the reader's right, pitch and weight in
 * screen pixels; the printed page uses 0.2 mm for each pixel. `pairGapPx` draws each stroke twice.
 */
export interface HatchLines {
  readonly kind: 'lines'
  readonly angles: readonly number[]
  readonly pitchPx: number
  readonly weightPx: number
  readonly dashPx: readonly [number, number] | null
  readonly pairGapPx: number | null
}
export interface HatchStipple {
  readonly kind: 'stipple'
  readonly radiusPx: number
  readonly quincunxPx: number
}
export const MM_PER_HATCH_PIXEL = 0.2

export const hatches: { readonly [H in HatchName]: HatchLines | HatchStipple | null } = {
  clean: null,
  repaired: { kind: 'lines', angles: [45], pitchPx: 5, weightPx: 0.6, dashPx: null, pairGapPx: null },
  patch: { kind: 'lines', angles: [45], pitchPx: 5, weightPx: 0.7, dashPx: [7, 3], pairGapPx: null },
  skin: { kind: 'lines', angles: [90], pitchPx: 4.5, weightPx: 0.55, dashPx: null, pairGapPx: null },
  replacement: { kind: 'lines', angles: [135], pitchPx: 8.5, weightPx: 0.5, dashPx: null, pairGapPx: 2.4 },
  'filler-over': { kind: 'stipple', radiusPx: 0.62, quincunxPx: 4 },
  'filler-through': { kind: 'lines', angles: [45, 135], pitchPx: 3.6, weightPx: 0.65, dashPx: null, pairGapPx: null },
  undetermined: { kind: 'lines', angles: [0], pitchPx: 7, weightPx: 0.5, dashPx: [2, 5], pairGapPx: null },
}

/** Round dots along every own edge of a panel nobody has looked at. */
export const unseenEdge = { dotPx: 1.1, pitchPx: 3.2 } as const

/** Type sizes and line heights, px. Nothing that must be read is smaller than 11.5; ruler figures may be 10.5. */
export const typeScale = {
  panelInHand: [21, 28],
  columnHeading: [17, 22],
  recordTitle: [15, 20],
  text: [13, 18],
  field: [12.5, 16],
  note: [12, 15],
  callout: [11.5, 14],
  caps: [11, 14],
  ruler: [10.5, 12],
} as const

/** Spacing in px. */
export const spacing = [4, 8, 12, 16, 24, 40] as const
/** Least size of anything a finger may use, px. */
export const TOUCH_TARGET_PX = 44

/** Printed page, mm and points (see the report's layout folder for how they are used). */
export const page = {
  marginLeftMm: 22,
  marginRightMm: 18,
  marginTopMm: 24,
  marginFootMm: 21,
  baselineMm: 4,
  sideColumnMm: 36,
  gutterMm: 4,
} as const
