import type { CountedPart, WeighedPanel } from '../../shared-types/computations.ts'
import type { Finding } from '../../shared-types/finding.ts'
import type { Judgement } from '../../shared-types/judgement.ts'
import type { Weighable } from '../../shared-types/own-weight.ts'
import { type PanelDefinition, panelName } from '../../shared-types/panel.ts'
import type { PartDefinition, PartEntry } from '../../shared-types/part.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { openQuestions } from '../analysis/originality/open-questions.ts'
import { originality } from '../analysis/originality/originality.ts'
import { weighable } from '../analysis/originality/own-weights.ts'
import { bodyAreaOf } from '../sheets/panel-list.ts'
import { partDefinition, partGroups, partsOfEveryCar } from '../sheets/parts-list.ts'
import { panelStateOf, panelsOfRecord } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowMark, shortened } from './row-marks.ts'
import { shownIn } from './shown-in.ts'

/** The record's judgement, computed anew: shares as bounds, open questions, what to look at next. */
export function judge(view: RecordView): Judgement {
  const definitions = panelsOfRecord(view).panels
  const panels = weighedPanels(view)
  const parts = countedParts(view)
  const strayPanels = view.panels
    .filter((state) => !definitions.some((definition) => definition.id === state.panelId))
    .map((state) => state.panelId)
  return {
    ...originality({ panels, parts, weights: view.weights, shownIn: shownIn(view) }),
    openQuestions: openQuestions({ panels, parts, strayPanels, claims: view.claims, carNumbers: view.carNumbers }),
  }
}

const weighedPanels = (view: RecordView): readonly WeighedPanel[] =>
  panelsOfRecord(view).panels.map((definition) => weighed(definition, view))

/** Everything of this car a weight can be set for. */
export const weighableOf = (view: RecordView): readonly Weighable[] =>
  weighable(weighedPanels(view), countedParts(view))

function weighed(definition: PanelDefinition, view: RecordView): WeighedPanel {
  const { inspection, reason, metal, paint, backSeen } = panelStateOf(view, definition.id)
  return {
    id: definition.id,
    label: panelName(definition, view.commission.names),
    bodyArea: bodyAreaOf(definition.id),
    layer: definition.layer,
    walked: definition.walked,
    areaM2: definition.areaM2,
    areaIsMeasured: definition.areaIsMeasured,
    inspection,
    reason,
    metal,
    paint,
    backSeen,
    findings: view.findings.filter((finding) => finding.panelId === definition.id).map(findingLine),
  }
}

const findingLine = (finding: Finding): WeighedPanel['findings'][number] => ({
  number: finding.number,
  text: `${rowMark('findings', finding.number)}, ${finding.kind} in the ${finding.layer}, ${finding.severity === 'none' ? 'no severity' : finding.severity}${finding.note === '' ? '.' : `: ${shortened(finding.note, 200)}`}`,
  learned: finding.learned,
  filler: finding.kind === 'filler',
  exhibits: finding.exhibits,
})

/**
 * Parts to be counted: what every car of this body carries, and what was entered beyond. Where a part was entered by
 * side or number, its entries stand for it. Documents are exhibits, not parts.
 */
function countedParts(view: RecordView): readonly CountedPart[] {
  const entered = view.parts.flatMap((entry) => {
    const definition = partDefinition(entry.partId)
    if (definition === undefined || definition.replacedInService === 'not-a-part') return []
    return [counted(definition, entry, view)]
  })
  const known = new Set(view.parts.map((entry) => partDefinition(entry.partId)?.id))
  const unseen = partsOfEveryCar(view.particulars.body).filter((definition) => !known.has(definition.id))
  return [...unseen.map((definition) => counted(definition, null, view)), ...entered]
}

/**
 * A part renewed by plan tells of service, never of the car; an accessory or later fitment of a kind that not every
 * car carries was not there when the car was new (common practice, no source).
 */
function leftOut(definition: PartDefinition, entry: PartEntry | null): CountedPart['leftOut'] {
  if (definition.replacedInService === 'routine') return 'renewed by plan'
  const later = entry?.state === 'period accessory' || entry?.state === 'later fitment'
  return definition.carried === 'some cars' && later ? 'added since' : null
}

function counted(definition: PartDefinition, entry: PartEntry | null, view: RecordView): CountedPart {
  const which = entry === null ? '' : entry.partId.slice(definition.id.length + 1)
  const name = definition[view.commission.names]
  return {
    id: entry?.partId ?? definition.id,
    label: which === '' ? name : `${name} ${which}`,
    group: definition.group,
    groupLabel: partGroups()[definition.group] ?? definition.group,
    state: entry?.state ?? 'not seen',
    leftOut: leftOut(definition, entry),
    learned: entry?.learned ?? null,
    exhibits: entry?.exhibits ?? [],
  }
}

export const judgementUseCases: Pick<UseCases, 'judgement.view' | 'judgement.weighable'> = {
  'judgement.view': async (program) => judge(program.record().view()),
  'judgement.weighable': async (program) => weighableOf(program.record().view()),
}
