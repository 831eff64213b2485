import type { Edition, Paper } from '../../../shared-types/edition.ts'
import type { PlanMarks, PlanSheet } from '../../../shared-types/figure.ts'
import { type PanelList, panelName } from '../../../shared-types/panel.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { JournalEntry, RecordView } from '../../../shared-types/record.ts'
import type { InspectionLevel } from '../../../shared-types/words.ts'
import { bodyPlan } from '../../figures/body-plan.ts'
import { planMarks } from '../../figures/plan-marks.ts'
import type { CarRecord } from '../../record/car-record.ts'
import { cautions } from '../../sheets/cautions.ts'
import { panelList } from '../../sheets/panel-list.ts'
import { partGroups, partsList } from '../../sheets/parts-list.ts'
import { printedSheet } from '../drawing/printed-sheet.ts'
import { turnRecord } from '../drawing/turned.ts'
import type { ComputedContent, EditionData, PictureSize, ReportContent } from '../report-content.ts'
import { changesSince } from './changes-since.ts'

/** Printed millimetres of one screen pixel at which callouts are set; see the tokens' hatches. */
const MM_PER_PIXEL = 0.25

/** Sheets of the plan that a level of inspection walks. */
const sheetsWalked: Readonly<Record<InspectionLevel, readonly PlanSheet['id'][]>> = {
  'outside only': ['outside'],
  'with openings': ['outside', 'openings', 'bay'],
  'with inside': ['outside', 'openings', 'bay', 'floor'],
  'with underneath': ['outside', 'openings', 'bay', 'floor', 'under'],
}

/** Panels of the record's body in walking order. */
export const panelsOf = ({ particulars, commission }: RecordView): PanelList =>
  panelList(particulars.body, commission.level, particulars.conditions)

/** Whether a panel of a sheet was looked at or carries a finding, though the level may have been narrowed since. */
function isWrittenOn(sheet: PlanSheet, { panels, findings }: RecordView): boolean {
  const drawn = new Set(sheet.views.flatMap((view) => view.panels.map(({ panelId }) => panelId)))
  return (
    panels.some(({ panelId, inspection }) => inspection !== 'not inspected' && drawn.has(panelId)) ||
    findings.some(({ panelId }) => drawn.has(panelId))
  )
}

/** Everything a report of the open record is made of; pictures are read from the record when they are asked for. */
export function recordContent(
  record: CarRecord,
  computed: ComputedContent,
  edition: EditionData,
  paper: Paper,
): ReportContent {
  const view = record.view()
  const { commission, particulars } = view
  const panels = panelsOf(view)
  const { body, dimensions, conditions } = particulars
  const plan = bodyPlan(body, commission.names, dimensions, conditions, commission.lengthUnit)
  const turned = turnRecord(view)
  const walked = sheetsWalked[commission.level]
  const marks: Partial<Record<PlanSheet['id'], PlanMarks>> = {}
  for (const sheet of plan.sheets) {
    if (!walked.includes(sheet.id) && !isWrittenOn(sheet, view)) continue
    const { sheet: upright, scale } = printedSheet(sheet)
    marks[sheet.id] = planMarks({
      sheet: upright,
      record: turned,
      definitions: panels.panels,
      names: commission.names,
      pixelsPerMm: 1 / (scale * MM_PER_PIXEL),
      inHand: null,
    })
  }
  return {
    ...computed,
    record: view,
    panels,
    parts: partsList(),
    partGroups: partGroups(),
    cautions: cautions(),
    plan,
    marks,
    edition,
    paper,
    ...reportPictures(record, view),
  }
}

/** The report renderings of a record, found by exhibit. */
function reportPictures(record: CarRecord, view: RecordView): Pick<ReportContent, 'pictureSizes' | 'picture'> {
  const originals = new Map(view.exhibits.map(({ number, photograph }) => [number, photograph?.sha256 ?? '']))
  return {
    pictureSizes: async () => {
      const sizes = await record.bytes.renderingSizes('report')
      const found = [...originals].map(([number, sha256]) => [number, sizes.get(sha256)] as const)
      return new Map(found.filter((entry): entry is readonly [number, PictureSize] => entry[1] !== undefined))
    },
    picture: async (number) => {
      const rendering = await record.bytes.rendering(originals.get(number) ?? '', 'report')
      if (rendering === null) {
        throw new ProblemError(
          'not-found',
          `The report copy of exhibit E${number} is no longer there. Import the photograph again, or leave it out of the report.`,
        )
      }
      return rendering.bytes
    },
  }
}

const ROWS_AT_ONCE = 500

/** What changed since an edition was made, from the journal; nothing when there is no edition before. */
export async function changesSinceEdition(record: CarRecord, previous: Edition | null): Promise<readonly string[]> {
  if (previous === null) return []
  const since: JournalEntry[] = []
  for (let before: number | null = null; ; ) {
    const { entries, more } = await record.journal(before, ROWS_AT_ONCE)
    since.push(...entries.filter(({ number }) => number > previous.journalNumber))
    const oldest = Math.min(...entries.map(({ number }) => number))
    if (!more || oldest <= previous.journalNumber) break
    before = oldest
  }
  const view = record.view()
  const definitions = new Map(panelsOf(view).panels.map((panel) => [panel.id, panel]))
  return changesSince(
    since.sort((a, b) => a.number - b.number),
    (id) => {
      const definition = definitions.get(id)
      return definition === undefined ? id : panelName(definition, view.commission.names)
    },
    view.commission,
  )
}
