import type { ExtentMark, HatchName, PlaceMark, PlanMarks, PlanSheet, PlanTableRow } from '../../shared-types/figure.ts'
import type { Finding } from '../../shared-types/finding.ts'
import { type PanelDefinition, type PanelId, panelName } from '../../shared-types/panel.ts'
import type { Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { MetalState, NameChoice } from '../../shared-types/words.ts'
import { callouts } from './callouts.ts'
import { legendInUse, panelMarks } from './panel-marks.ts'

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
    if (panelId === inHand) return 0
    if (withFinding.has(panelId)) return 1
    if (inspection === 'not accessible' || hatch !== 'clean') return 2
    return inspection === 'not inspected' ? 3 : 4
  }
  const shortNames = new Map(here.map((definition) => [definition.id, panelName({ ...definition, side: null }, names)]))
  const wishes = [...panels]
    .sort((a, b) => rank(a) - rank(b) || a.stop - b.stop)
    .map((mark) => ({ ...mark, name: shortNames.get(mark.panelId) ?? mark.name, quiet: rank(mark) === 4 }))
  return {
    panels,
    extents,
    callouts: callouts(sheet, wishes, pixelsPerMm),
    places: placeMarks(record).filter(({ view }) => views.has(view)),
    captions: [],
    table: tableRows(here, record, names),
    legend: legendInUse(
      panels,
      extents.map(({ hatch }) => hatch),
    ),
  }
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
