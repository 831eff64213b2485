import { z } from 'zod'
import { type DimensionList, ownDimensions } from './body-dimensions.ts'
import { carConditions, carNumberDraft, commission, consent, particulars, visitDraft } from './car.ts'
import type { Caution } from './caution.ts'
import { claimDraft } from './claim.ts'
import { coatingSubstrate } from './coating.ts'
import type { CoatingCar } from './coating-car.ts'
import type { CoatingChange } from './coating-change.ts'
import type { CoatingCut } from './coating-cut.ts'
import { columnMapping, type PastedColumns, pastedText, type ReadingGrid } from './coating-import.ts'
import type { CoatingMap } from './coating-map.ts'
import type { PlaceLine } from './coating-place.ts'
import { correctionDraft } from './correction.ts'
import { paper } from './edition.ts'
import { exhibitDraft, exhibitWords, measurement, pickedGeometry } from './exhibit.ts'
import { type FasteningCompared, fasteningFound } from './fastening.ts'
import { type FasteningAnswer, fasteningSample } from './fastening-sample.ts'
import type { PlanFigure, PlanMarks } from './figure.ts'
import { findingDraft, planPoint, viewId } from './finding.ts'
import { setAside, settledQuestion } from './identity-asking.ts'
import type { IdentityMore } from './identity-more.ts'
import type { IdentityView, NextLook, OfferedSheet, TellView } from './identity-view.ts'
import type { IdentityTells, IdentityWeights } from './identity-weights.ts'
import type { GapJoint } from './joint.ts'
import type { Judgement } from './judgement.ts'
import type { PictureAnswer, TellMeasured } from './measuring-view.ts'
import type { MissingLine } from './missing-line.ts'
import type { NumberFormat } from './number-format.ts'
import { observation, tellKey } from './observation.ts'
import { ownWeightDraft, type Weighable, weighedKey } from './own-weight.ts'
import { type CarFeature, type PanelList, panelId } from './panel.ts'
import { type PartDefinition, partEntry, partId } from './part.ts'
import type { InterchangeView, PartExpectations } from './part-expectation.ts'
import type { Problem } from './problem.ts'
import { gaugeCheckDraft, gaugeDraft, gaugeMode, spotDraft } from './reading.ts'
import type { Acknowledgement, JournalEntry, KnownRecord, RecordView } from './record.ts'
import { asking, changing, photographSource, type RequestLine } from './request-line.ts'
import { sheetName } from './sheet-copy.ts'
import { sheetOrigin, sheetRequests } from './sheet-requests.ts'
import type { SheetTerms } from './sheet-terms.ts'
import type { KeptTape, TapeAnswer } from './tape-answer.ts'
import { tapeTaken } from './tape-question.ts'
import type { TimeLineFigure, TimeLineView } from './time-line-view.ts'
import { instant, lengthUnit, lineText, noteText, requiredLine } from './units.ts'
import { bodyStyle, inspectionLevel, metalState, nameChoice, paintState } from './words.ts'

const number = z.number().int().positive()
const path = z.string().min(1).max(4096)
const taskId = z.uuid()

/** Every request the two processes exchange. Names read `place.act`. */
export const requests = {
  'records.list': asking<readonly KnownRecord[]>()({}),
  'records.create': asking<RecordView>()({
    fileName: z.string().regex(/^[^/\\:*?"<>|\p{Cc}]{1,120}$/u),
    particulars,
    commission,
    visit: visitDraft,
  }),
  'records.open': asking<RecordView>()({ path, readOnly: z.boolean() }),
  'records.makeDemonstration': asking<{ readonly path: string }>()({}),
  'records.demonstration': asking<RecordView>()({}),
  'records.close': asking<null>()({}),
  'record.view': asking<RecordView>()({}),
  'record.verify': asking<{ readonly rows: number; readonly sound: boolean; readonly firstBad: number | null }>()({}),
  'record.backup': asking<{ readonly path: string }>()({}),
  'record.journal': asking<{ readonly entries: readonly JournalEntry[]; readonly more: boolean }>()({
    before: number.nullable(),
    limit: z.number().int().min(1).max(500),
  }),

  'lists.panels': asking<PanelList>()({
    body: bodyStyle,
    level: inspectionLevel,
    conditions: carConditions,
  }),
  'lists.dimensions': asking<DimensionList>()({ body: bodyStyle }),
  'lists.features': asking<readonly CarFeature[]>()({ body: bodyStyle }),
  'lists.cautions': asking<readonly Caution[]>()({}),
  'lists.parts': asking<readonly PartDefinition[]>()({}),
  /** Gaps of a body that are measured, by name. */
  'lists.joints': asking<readonly GapJoint[]>()({ body: bodyStyle, names: nameChoice }),

  'figures.plan': asking<PlanFigure>()({
    body: bodyStyle,
    names: nameChoice,
    /** What this car measures and has; left out, the body is drawn as it usually is, without what only some cars have. */
    dimensions: ownDimensions.optional(),
    conditions: carConditions.optional(),
    /** Unit the plan is told in, for those who do not see it; metric where left out. */
    lengthUnit: lengthUnit.optional(),
  }),
  'figures.marks': asking<PlanMarks>()({
    sheet: z.enum(['outside', 'openings', 'bay', 'floor', 'under']),
    /** Screen pixels per millimetre of the car, so that callouts are set at a readable size. */
    pixelsPerMm: z.number().min(0.01).max(10),
    inHand: panelId.nullable(),
  }),
  /** Thickness, its uncertainty and the chance of filler over one panel, with area and volume. */
  'coating.map': asking<CoatingMap>()({ panelId }),
  /** One panel cut along a straight line: thickness with its band, paint alone, readings near the line. */
  'coating.cut': asking<CoatingCut>()({ panelId, from: planPoint, to: planPoint }),
  /** Every panel read on one scale, with what its films are compatible with. */
  'coating.car': asking<CoatingCar>()({}),
  /** Filler before and after a correction that cites readings; null where it cites none. */
  'coating.change': asking<CoatingChange | null>()({ number }),
  /** What is to be known before a reading is taken there: what the gauge can read, and edge and curve. */
  'coating.place': asking<readonly PlaceLine[]>()({
    panelId,
    view: viewId,
    at: planPoint.nullable(),
    gauge: number.nullable(),
    mode: gaugeMode,
    substrate: coatingSubstrate,
  }),
  /** Places to read one after the other while walking. */
  'coating.grid': asking<ReadingGrid>()({ panelId }),
  /** Pasted columns or the text of a CSV, as they would go in; without a mapping the likeliest is taken. */
  'coating.columns': asking<PastedColumns>()({ panelId, text: pastedText, mapping: columnMapping.nullable() }),
  /** What comes of readings by tape, calliper or probe; nothing is kept. */
  'measuring.tape': asking<TapeAnswer>()(tapeTaken.shape),
  /** The measurements of the record that came of readings, worked out again. */
  'measuring.kept': asking<readonly KeptTape[]>()({}),
  ...sheetRequests,
  'sheets.offered': asking<readonly OfferedSheet[]>()({}),
  /** What a claim can say in the terms of the record's sheets. */
  'sheets.terms': asking<readonly SheetTerms[]>()({}),
  /** Every number of 17 characters against 49 CFR part 565, and whether the format concerns this car. */
  'numbers.format': asking<NumberFormat>()({}),
  /** Tells that are looked for on one panel, in the order of the sheets; nothing is inferred, so none has bits. */
  'tells.ofPanel': asking<readonly TellView[]>()({ panelId }),
  /** What the car can still be; `whatIf` stands in for what is recorded of those tells, and nothing of it is kept. */
  'identity.view': asking<IdentityView>()({
    whatIf: z.array(observation).max(200),
    setAside: setAside.optional(),
    /** Variables whose because-chain is wanted. */
    chainsOf: z.array(z.string().max(161)).max(500),
    /** What the tells not yet looked at are weighed for. */
    question: settledQuestion.optional(),
  }),
  /** What stays the same of it: tells as the record's sheets describe them. */
  'identity.tells': asking<IdentityTells>()({}),
  /** What changes of it with every key, and chains that were opened. */
  'identity.weights': asking<IdentityWeights>()({
    whatIf: z.array(observation).max(200),
    setAside: setAside.optional(),
    chainsOf: z.array(z.string().max(161)).max(500),
    /** Claims whose because-chain is wanted. */
    claimChains: z.array(number).max(500),
    question: settledQuestion.optional(),
  }),
  /** What comes after the weights: most probable builds, rarity, what would settle each claim and what it would take. */
  'identity.more': asking<IdentityMore | null>()({
    whatIf: z.array(observation).max(200),
    setAside: setAside.optional(),
  }),
  /** Each part against what the sheets expect of this very car, with support and reasons. */
  'parts.expectation': asking<PartExpectations>()({}),
  /** What else carried a part, and which parts of this car another car carried. Null and empty: everything. */
  'parts.interchange': asking<InterchangeView>()({ partId: partId.nullable(), line: lineText }),
  /** A fastening expected against found; nothing is kept. */
  'parts.fastening': asking<FasteningCompared>()(fasteningFound.shape),
  /** What a sample of alike fastenings says of all; how many and which to look at. */
  'parts.sample': asking<FasteningAnswer>()(fasteningSample.shape),
  /** What was picked on a photograph, measured; nothing is kept. */
  'measuring.picture': asking<PictureAnswer>()({ picked: pickedGeometry }),
  /** Tells of the record's sheets that such a measurement can decide. */
  'measuring.tells': asking<readonly TellMeasured[]>()({
    value: z.number(),
    standardUncertainty: z.number().positive(),
    unit: measurement.shape.unit,
  }),
  /** The three looks worth most for the whole build; empty without a sheet, and where nothing can be inferred. */
  'looks.next': asking<readonly NextLook[]>()({}),
  'judgement.view': asking<Judgement>()({}),
  /** Everything of this car a weight of the user's own can be set for. */
  'judgement.weighable': asking<readonly Weighable[]>()({}),
  /** Everything dated on the car, narrowed together, with conflicts; and the same as a figure. */
  'dates.timeLine': asking<{ readonly view: TimeLineView; readonly figure: TimeLineFigure }>()({}),
  'register.table': asking<{ readonly fileName: string; readonly csv: string }>()({
    register: z.enum(['panels', 'findings', 'spots', 'parts', 'claims', 'corrections', 'exhibits', 'carNumbers']),
  }),
  /** Composing it can be ended by `task.cancel` where a task is named. */
  'report.preview': asking<{ readonly document: string; readonly pages: number; readonly byteLength: number }>()({
    paper,
    taskId: taskId.optional(),
  }),
  'report.readiness': asking<readonly MissingLine[]>()({}),

  'particulars.set': changing({ particulars }),
  'commission.set': changing({ commission }),
  'consent.set': changing({ consent }),
  'visit.add': changing({ draft: visitDraft }),
  'visit.amend': changing({ number, draft: visitDraft }),
  'carNumber.add': changing({ draft: carNumberDraft }),
  'carNumber.amend': changing({ number, draft: carNumberDraft }),
  'carNumber.withdraw': changing({ number }),

  'panel.setMetal': changing({ panelId, metal: metalState }),
  'panel.setPaint': changing({ panelId, paint: paintState }),
  'panel.nothingFound': changing({ panelId }),
  'panel.notAccessible': changing({ panelId, reason: requiredLine }),
  'panel.notInspected': changing({ panelId }),
  'panel.howSeen': changing({ panelId, backSeen: z.boolean(), magnetVoid: z.boolean() }),
  'panel.note': changing({ panelId, note: noteText }),

  'finding.add': changing({ draft: findingDraft }),
  'finding.amend': changing({ number, draft: findingDraft }),
  'finding.withdraw': changing({ number }),
  'spot.add': changing({ draft: spotDraft }),
  'spot.amend': changing({ number, draft: spotDraft }),
  'spot.withdraw': changing({ number }),
  'spots.import': changing({
    panelId,
    text: pastedText,
    mapping: columnMapping,
    gauge: number.nullable(),
    mode: gaugeMode,
    substrate: coatingSubstrate.default('unknown'),
    readAt: instant,
  }),
  'gauge.add': changing({ draft: gaugeDraft }),
  'gauge.amend': changing({ number, draft: gaugeDraft }),
  'gaugeCheck.add': changing({ draft: gaugeCheckDraft }),
  'gaugeCheck.withdraw': changing({ number }),
  'part.set': changing({ entry: partEntry }),
  /** Sets how many times a thing counts in the shares of originality, in the examiner's name. */
  'weight.set': changing({ draft: ownWeightDraft }),
  'weight.withdraw': changing({ weighs: weighedKey }),
  'claim.add': changing({ draft: claimDraft }),
  'claim.amend': changing({ number, draft: claimDraft }),
  'claim.withdraw': changing({ number }),
  'sheet.take': changing({ sheetId: sheetName }),
  /** A sheet the user wrote: YAML or JSON; refused with what is wrong, line by line. */
  'sheet.takeOwn': changing({ source: sheetOrigin }),
  'sheet.leave': changing({ sheetId: sheetName }),
  'observation.set': changing({ observation }),
  'observation.withdraw': changing({ tell: tellKey }),
  'correction.add': changing({ draft: correctionDraft }),
  'correction.amend': changing({ number, draft: correctionDraft }),
  'correction.withdraw': changing({ number }),
  'exhibit.add': changing({ draft: exhibitDraft }),
  'exhibit.describe': changing({ number, words: exhibitWords }),
  /** A measurement read off a photograph: its value is computed from what was picked. */
  'exhibit.addPicked': changing({ words: exhibitWords, what: requiredLine, picked: pickedGeometry }),
  'exhibit.repick': changing({ number, words: exhibitWords, what: requiredLine, picked: pickedGeometry }),
  /** Corrects a measurement that was not read off a photograph; tells that take their value from it follow. */
  'exhibit.remeasure': changing({ number, words: exhibitWords, measurement }),
  'exhibit.withdraw': changing({ number }),
  'edition.issue': changing({ paper, reason: noteText }),
  'journal.undo': changing({}),
  'journal.redo': changing({}),

  /** Each photograph becomes one exhibit by one command; refused ones are named and the others go in. */
  'exhibits.import': asking<{
    readonly taken: readonly Acknowledgement[]
    readonly refused: readonly { readonly fileName: string; readonly problem: Problem }[]
  }>()({
    taskId,
    sources: z.array(photographSource).min(1).max(5000),
    panelId: panelId.nullable(),
    view: viewId.nullable(),
    madeBy: lineText,
  }),
  'task.cancel': asking<null>()({ taskId }),
} as const

export type Requests = typeof requests
export type RequestName = keyof Requests
export type RequestInput<N extends RequestName> = z.infer<Requests[N]['input']>
export type RequestOutput<N extends RequestName> =
  Requests[N] extends RequestLine<z.ZodType, infer Output> ? Output : never
/** What crosses the door: a value, or a problem a user can act on. */
export type Reply<N extends RequestName> = { readonly value: RequestOutput<N> } | { readonly problem: Problem }

/** What the main process says unasked. */
export type ProgramEvent =
  | { readonly event: 'record.changed'; readonly acknowledgement: Acknowledgement }
  | { readonly event: 'record.closed' }
  | {
      readonly event: 'task.progress'
      readonly taskId: string
      readonly done: number
      readonly all: number
      readonly label: string
    }
  | { readonly event: 'task.ended'; readonly taskId: string }

/** The one object a window hands to the renderer. */
export interface Door {
  ask<N extends RequestName>(name: N, input: RequestInput<N>): Promise<Reply<N>>
  /** Streams a file to the main process; the id serves once as a photograph source. */
  upload(file: File): Promise<string>
  listen(hear: (event: ProgramEvent) => void): () => void
  /** Address of a picture or document: `exhibit/12/thumbnail`, `exhibit/12/report`, `exhibit/12/original`, `document/…`, `edition/1`. */
  address(what: string): string
}
