import type { HatchName } from './figure.ts'

/**
 * Colours of the sheets. Words stand in ink, ink2 or accent, never under 7 to 1 against the sheet; what carries meaning
 * without being a word stands in one of these or in faint, never under 3 to 1 (WCAG 2.2, 1.4.6 and 1.4.11). Hairlines
 * rule rows and stations and mean nothing alone. The outdoor sheet is for sunlight: white, black, and no faint lines.
 */
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
  outdoor: {
    sheet: '#FFFFFF',
    ink: '#000000',
    ink2: '#262626',
    hairline: '#767676',
    faint: '#595959',
    accent: '#00486B',
  },
} as const
export type SheetName = keyof typeof sheets
export type ColourRole = keyof (typeof sheets)['paper']

/** Inks of the printed page, on white. */
export const printedInks = {
  paper: '#FFFFFF',
  ink: '#16191D',
  soft: '#4D5359',
  hair: '#8D9298',
  accent: '#005B7A',
} as const

/**
 * Thickness, thin to thick: 16 equal steps of cividis, even in lightness and the same to colour-blind eyes (Nuñez, Anderton
 * and Renslow 2018, PLoS ONE 13(7) e0199239). For coating thickness and for nothing else.
 */
export const cividis = [
  '#00224E',
  '#002E6C',
  '#1E3A6F',
  '#35456C',
  '#47516C',
  '#575D6D',
  '#666970',
  '#757575',
  '#848279',
  '#948E77',
  '#A59C74',
  '#B7A96E',
  '#C8B866',
  '#DBC75A',
  '#EED649',
  '#FEE838',
] as const

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
/** Marks laid on the plan, px at 1440 wide: halos keep lines and letters apart from what they cross. */
export const markWeights = {
  measure: 0.7,
  ringInHand: 1.6,
  hovered: 1.8,
  cleared: 2.4,
  halo: 3,
  through: 3,
  focus: 3.4,
  calloutDot: 3.4,
  dot: 5,
  lineHalo: 5,
  dotHalo: 9,
} as const
/** Light lines on the night sheet bloom; they are drawn this much thinner. */
export const NIGHT_LINE_FACTOR = 0.92
/** Times the weight of every line; sunlight eats thin ones. */
export const sheetLineFactor: { readonly [S in SheetName]: number } = {
  paper: 1,
  night: NIGHT_LINE_FACTOR,
  outdoor: 1.4,
}

/** Rules of the page on screen, px: between rows, over sections and round answers, focus, chosen row, current place. */
export const rules = { row: 1, section: 1.5, focus: 2, chosen: 3, current: 4 } as const

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
  // Strokes that overlap: solid ink, the loudest mark there is, for the worst there is to find.
  'rusted-through': { kind: 'lines', angles: [0], pitchPx: 1, weightPx: 1.3, dashPx: null, pairGapPx: null },
}
/** Strokes at least as wide as their pitch leave no paper between them. */
export const isSolid = (hatch: HatchLines | HatchStipple | null): boolean =>
  hatch?.kind === 'lines' && hatch.weightPx >= hatch.pitchPx

/** Round dots along every own edge of a panel nobody has looked at. */
export const unseenEdge = { dotPx: 1.1, pitchPx: 3.2 } as const

/** Type sizes and line heights, px. Nothing that must be read is smaller than 11.5; ruler figures may be 10.5. */
export const typeScale = {
  panelInHand: [21, 28],
  columnHeading: [17, 22],
  recordTitle: [15, 20],
  entry: [14, 20],
  text: [13, 18],
  field: [12.5, 16],
  note: [12, 15],
  callout: [11.5, 14],
  caps: [11, 14],
  ruler: [10.5, 12],
} as const
/** Times every size and line height; in sunlight a reader stands further off. */
export const sheetTypeFactor: { readonly [S in SheetName]: number } = { paper: 1, night: 1, outdoor: 1.15 }
/** Two weights of words, and one more of figures. */
export const typeWeights = { plain: 400, strongFigure: 500, strong: 600 } as const
/** Letters of the figure face are wider than those of words and set this much smaller. */
export const FIGURE_SHARE = 0.965
/** Small capitals are set apart by this much of their size. */
export const CAPS_SPACING = 0.09

/**
 * The page by width of the window, px: a rugged laptop in a yard, a desk, a large screen. `type`, `line` and `stroke`
 * are times the sizes, line heights and drawn lines. `secondSheet` stands beside the sheet where there is room.
 */
export const windowWidths = {
  narrow: { below: 1200, rail: 56, sheet: 300, secondSheet: 0, margin: 24, type: 1, line: 1, stroke: 1 },
  usual: { below: 2000, rail: 124, sheet: 328, secondSheet: 0, margin: 40, type: 1, line: 1, stroke: 1 },
  wide: { below: null, rail: 168, sheet: 420, secondSheet: 440, margin: 40, type: 15 / 13, line: 7 / 6, stroke: 1.25 },
} as const

/** Spacing in px. */
export const spacing = [4, 8, 12, 16, 24, 40] as const
/** Corners are square; only the drawing of a key is a little round, px. */
export const KEY_CAP_RADIUS_PX = 2
/** Least size of anything a finger may use, px. */
export const TOUCH_TARGET_PX = 44

/** Sheets of paper, mm: A4 by ISO 216; Letter is 8.5 by 11 inches, exact. */
export const paperSizes = { A4: { widthMm: 210, heightMm: 297 }, Letter: { widthMm: 215.9, heightMm: 279.4 } } as const

/** Sizes of the printed page's type, points. Lines are one baseline apart but for the title's. */
export const printedType = {
  title: 34,
  section: 20,
  subtitle: 13,
  opinion: 11,
  text: 9,
  table: 7.8,
  sideNote: 7.6,
  running: 7.4,
  viewName: 7.4,
  lettering: 7,
  ring: 6.6,
} as const
/** Code is set a little smaller than the words around it, because its letters are wider. */
export const PRINTED_CODE_SHARE = 0.91
/** Lines of the title and of what stands below it, mm. */
export const titlePitch = { titleMm: 14, subtitleMm: 6 } as const

/** Rules of the printed page, mm. */
export const printedRules = {
  /** Above and below a table, under its head, between its rows. */
  tableEnd: 0.25,
  tableHead: 0.1,
  tableRow: 0.08,
  /** Over a section's block, on a signature's line, under the car on the title page. */
  block: 0.2,
  signature: 0.2,
  ground: 0.2,
  /** Between rows of the title page, over the facts of a photograph. */
  thin: 0.1,
} as const

/** Marks and measures in printed figures, mm. */
export const printedMarks = {
  ringRadius: 2.1,
  ringLine: 0.2,
  leaderDot: 0.45,
  pointDot: 0.5,
  locatorDot: 0.7,
  /** A finding along a line; rusted through. */
  extentLine: 0.3,
  extentThrough: 0.6,
  extentDash: [0.6, 0.4],
  extentHalo: 1,
  /** Paper kept clear round a detail, from side to side. */
  cleared: 0.52,
  dimension: 0.12,
  axis: 0.1,
  legendPatch: { width: 8, height: 2.8 },
  legendRow: 4,
  scaleBarRoom: 7,
} as const

/** Printed page, mm and points (see the report's layout folder for how they are used). */
export const page = {
  marginLeftMm: 22,
  marginRightMm: 18,
  marginTopMm: 24,
  marginFootMm: 21,
  baselineMm: 4,
  /** From the top of a line to its baseline. */
  letterBaselineMm: 2.9,
  sideColumnMm: 36,
  gutterMm: 4,
} as const

/** A plan page: drawing to the left, table to the right of it, mm. */
export const planPage = {
  gutterMm: 6,
  /** A sheet of several views is drawn as large as it goes; beside a single view most names stand on one line. */
  leastTableMm: { severalViews: 50, oneView: 64 },
  /** Most height of the drawing, so that scale bar, legend and caption fit beneath it on either paper. */
  drawingHeightMm: 180,
  /** 1 : n; a drawing that would be smaller beside its table stands across the page, the table beneath. */
  smallestScale: 60,
} as const
