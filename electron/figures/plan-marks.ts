import type {
  ExtentMark,
  HatchName,
  PanelMark,
  PlaceMark,
  PlanMarks,
  PlanSheet,
  PlanTableRow,
} from '../../shared-types/figure.ts'
import type { Finding, PlanPoint } from '../../shared-types/finding.ts'
import { type PanelDefinition, type PanelId, panelName } from '../../shared-types/panel.ts'
import type { Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { type MetalState, type NameChoice, severity } from '../../shared-types/words.ts'
import { groundOf, type SheetBox } from './callout-ground.ts'
import type { CalloutWish } from './callout-wish.ts'
import { callouts } from './callouts.ts'
import { boundsOf, type Point } from './cubic-path.ts'
import { legendInUse, panelMarks } from './panel-marks.ts'
import { viewCaptions } from './sheet-furniture.ts'

/** What the marks of one sheet are made from. */
export interface MarksOf {
  readonly sheet: PlanSheet
  readonly record: RecordView
  /** Panels of this car in walking order. */
  readonly definitions: readonly PanelDefinition[]
  readonly names: NameChoice
  readonly pixelsPerMm: number
  readonly inHand: PanelId | null
}

/** Everything on one sheet of the plan that follows the record: hatches, extents, callouts, places, legend, table. */
export function planMarks({ sheet, record, definitions, names, pixelsPerMm, inHand }: MarksOf): PlanMarks {
  const drawn = new Set(sheet.views.flatMap((view) => view.panels.map((panel) => panel.panelId)))
  const here = definitions.filter((definition) => drawn.has(definition.id))
  const panels = panelMarks(here, record.panels, names)
  const views = new Set(sheet.views.map((view) => view.id))
  const metalOf = new Map(panels.map(({ panelId, metal }) => [panelId, metal]))
  const extents = record.findings
    .flatMap((finding) => extentMark(finding, metalOf.get(finding.panelId)))
    .filter(({ view }) => views.has(view))
  const withFinding = new Set(record.findings.map((finding) => finding.panelId))
  const rank = ({ panelId, inspection, hatch }: (typeof panels)[number]): number => {
    if (withFinding.has(panelId)) return 1
    if (inspection === 'not accessible' || hatch !== 'clean') return 2
    return inspection === 'not inspected' ? 3 : 4
  }
  const shortNames = new Map(here.map((definition) => [definition.id, panelName({ ...definition, side: null }, names)]))
  const wishes = [...panels]
    .sort((a, b) => rank(a) - rank(b) || a.stop - b.stop)
    .map((mark) =>
      calloutWish(mark, record.findings, shortNames.get(mark.panelId) ?? mark.name, rank(mark) === 4, inHand),
    )
  const places = placeMarks(record).filter(({ view }) => views.has(view))
  return {
    panels,
    extents,
    callouts: callouts(sheet, wishes, pixelsPerMm, markBoxes(sheet, extents, places, pixelsPerMm)),
    places,
    captions: viewCaptions(sheet, groundOf(sheet, pixelsPerMm), pixelsPerMm),
    table: tableRows(here, record, names),
    legend: legendInUse(
      panels,
      extents.map(({ hatch }) => hatch),
    ),
  }
}

const severities = severity.options

/** What is called out of a panel: its state and its findings by number, pointing at the gravest that is drawn. */
function calloutWish(
  mark: PanelMark,
  findings: readonly Finding[],
  name: string,
  quiet: boolean,
  inHand: PanelId | null,
): CalloutWish {
  const own = findings.filter(({ panelId }) => panelId === mark.panelId)
  const numbers = own.map(({ number }) => `F\u202f${number}`).join(', ')
  const drawn = own
    .filter(({ extent }) => extent !== null)
    .sort((a, b) => severities.indexOf(b.severity) - severities.indexOf(a.severity))
  const extent = drawn[0]?.extent ?? null
  return {
    panelId: mark.panelId,
    stop: mark.stop,
    name: numbers === '' ? name : `${name} ${numbers}`,
    word: mark.word,
    quiet,
    inHand: mark.panelId === inHand,
    hatched: mark.hatch !== 'clean',
    at: extent && { view: extent.view, point: middleOf(extent.points) },
  }
}

function middleOf(points: readonly PlanPoint[]): PlanPoint {
  const mean = (axis: 'u' | 'v') => points.reduce((sum, point) => sum + point[axis], 0) / Math.max(1, points.length)
  return { u: mean('u'), v: mean('v') }
}

/** Room that extents, exhibits and spots take on the sheet, mm; a callout must not hide them. */
function markBoxes(
  sheet: PlanSheet,
  extents: readonly ExtentMark[],
  places: readonly PlaceMark[],
  pixelsPerMm: number,
): SheetBox[] {
  const air = 4 / pixelsPerMm
  const boxOf = (viewId: string, points: readonly PlanPoint[]): SheetBox[] => {
    const view = sheet.views.find(({ id }) => id === viewId)
    if (view === undefined || points.length === 0) return []
    const { u, v, width, height } = boundsOf(points.map((point): Point => [point.u, point.v]))
    const [left, top] = [view.at.x + u - view.box.u, view.at.y + v - view.box.v]
    return [{ left: left - air, top: top - air, right: left + width + air, foot: top + height + air }]
  }
  return [
    ...extents.flatMap(({ view, points }) => boxOf(view, points)),
    ...places.flatMap(({ view, at }) => boxOf(view, [at])),
  ]
}

function extentMark(finding: Finding, metal: MetalState | undefined): ExtentMark[] {
  if (finding.extent === null) return []
  const { view, shape, points } = finding.extent
  return [
    {
      finding: finding.number,
      panelId: finding.panelId,
      view,
      shape,
      points,
      hatch: hatchOfExtent(finding, metal),
    },
  ]
}

/** Metal eaten through is solid ink; filler takes the hatch of the state its panel is in. Other kinds have an edge only. */
function hatchOfExtent({ kind }: Finding, metal: MetalState | undefined): HatchName | null {
  if (kind === 'perforation') return 'rusted-through'
  if (kind !== 'filler') return null
  return metal === 'filler in place of metal' ? 'filler-through' : 'filler-over'
}

function placeMarks(record: RecordView): PlaceMark[] {
  const exhibits = record.exhibits.flatMap(({ number, panelId, view, at }): PlaceMark[] =>
    panelId && view && at ? [{ kind: 'exhibit', number, panelId, view, at, medianUm: null }] : [],
  )
  const spots = record.spots.flatMap((spot): PlaceMark[] =>
    spot.at
      ? [
          {
            kind: 'spot',
            number: spot.number,
            panelId: spot.panelId,
            view: spot.view,
            at: spot.at,
            medianUm: medianOf(spot),
          },
        ]
      : [],
  )
  return [...exhibits, ...spots]
}

/**
 * Median of the values of a spot, µm; "more than" counts as the largest, so a median that falls on one is not a
 * value and null is returned, as for a spot without any reading.
 */
export function medianOf(spot: Pick<Spot, 'values'>): number | null {
  const values = spot.values
    .flatMap((value) =>
      value.kind === 'no reading' ? [] : [value.kind === 'value' ? value.um : Number.POSITIVE_INFINITY],
    )
    .sort((a, b) => a - b)
  if (values.length === 0) return null
  const middle = ((values[Math.floor((values.length - 1) / 2)] ?? 0) + (values[Math.floor(values.length / 2)] ?? 0)) / 2
  return Number.isFinite(middle) ? middle : null
}

function tableRows(definitions: readonly PanelDefinition[], record: RecordView, names: NameChoice): PlanTableRow[] {
  const marks = panelMarks(definitions, record.panels, names)
  return definitions.map((definition, index) => {
    const mark = marks[index]
    return {
      stop: definition.stop,
      panelId: definition.id,
      name: mark?.name ?? definition.id,
      layer: definition.layer,
      inspection: mark?.inspection ?? 'not inspected',
      metal: mark?.metal ?? 'not inspected',
      paint: mark?.paint ?? 'not inspected',
      findings: record.findings.filter(({ panelId }) => panelId === definition.id).map(({ number }) => `F${number}`),
      exhibits: record.exhibits.filter(({ panelId }) => panelId === definition.id).map(({ number }) => `E${number}`),
    }
  })
}
