import { z } from 'zod'
import { type DimensionList, ownDimensions } from './body-dimensions.ts'
import { carConditions, carNumberDraft, commission, consent, particulars, visitDraft } from './car.ts'
import type { Caution } from './caution.ts'
import { claimDraft } from './claim.ts'
import type { CoatingMap } from './coating-map.ts'
import { correctionDraft } from './correction.ts'
import { paper } from './edition.ts'
import { exhibitDraft, exhibitWords } from './exhibit.ts'
import type { PlanFigure, PlanMarks } from './figure.ts'
import { findingDraft, viewId } from './finding.ts'
import type { IdentityView, OfferedSheet } from './identity-view.ts'
import type { Judgement } from './judgement.ts'
import { observation, tellKey } from './observation.ts'
import { type CarFeature, type PanelList, panelId } from './panel.ts'
import { type PartDefinition, partEntry } from './part.ts'
import type { Problem } from './problem.ts'
import { gaugeCheckDraft, gaugeDraft, spotDraft } from './reading.ts'
import type { Acknowledgement, JournalEntry, KnownRecord, RecordView } from './record.ts'
import { sheetName } from './sheet-copy.ts'
import { lineText, noteText, requiredLine } from './units.ts'
import { bodyStyle, inspectionLevel, metalState, nameChoice, paintState } from './words.ts'

/** One line of the contract: the schema of the input, and the type of the answer. */
export interface RequestLine<Input extends z.ZodType, Output> {
  readonly input: Input
  /** Carries the type only; never set. */
  readonly output?: Output
  /** True when the request changes the record; such a request carries a `commandId`. */
  readonly changes: boolean
}

const asking =
  <Output>() =>
  <Shape extends z.ZodRawShape>(shape: Shape): RequestLine<z.ZodObject<Shape, z.core.$strict>, Output> => ({
    input: z.strictObject(shape),
    changes: false,
  })

/** Chosen by the sender; the same id sent again is answered with the first acknowledgement. */
export const commandId = z.uuid()

const changing = <Shape extends z.ZodRawShape>(
  shape: Shape,
): RequestLine<z.ZodObject<Shape & { commandId: typeof commandId }, z.core.$strict>, Acknowledgement> => ({
  input: z.strictObject({ commandId, ...shape }),
  changes: true,
})

const number = z.number().int().positive()
const path = z.string().min(1).max(4096)
const taskId = z.uuid()

/** Where photographs and reference sheets come from: bytes already handed in through the door's upload, or a file of this machine. */
export const photographSource = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('upload'), upload: z.uuid() }),
  z.strictObject({ from: z.literal('file'), path }),
])

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

  'figures.plan': asking<PlanFigure>()({
    body: bodyStyle,
    names: nameChoice,
    /** What this car measures and has; left out, the body is drawn as it usually is, without what only some cars have. */
    dimensions: ownDimensions.optional(),
    conditions: carConditions.optional(),
  }),
  'figures.marks': asking<PlanMarks>()({
    sheet: z.enum(['outside', 'openings', 'bay', 'floor', 'under']),
    /** Screen pixels per millimetre of the car, so that callouts are set at a readable size. */
    pixelsPerMm: z.number().min(0.01).max(10),
    inHand: panelId.nullable(),
  }),
  /** Thickness, its uncertainty and the chance of filler over one panel, with area and volume. */
  'coating.map': asking<CoatingMap>()({ panelId }),
  'sheets.offered': asking<readonly OfferedSheet[]>()({}),
  /** What the car can still be; `whatIf` stands in for what is recorded of those tells, and is not kept. */
  'identity.view': asking<IdentityView>()({
    whatIf: z.array(observation).max(200),
    /** Variables whose because-chain is wanted. */
    chainsOf: z.array(z.string().max(161)).max(500),
  }),
  'judgement.view': asking<Judgement>()({}),
  'register.table': asking<{ readonly fileName: string; readonly csv: string }>()({
    register: z.enum(['panels', 'findings', 'spots', 'parts', 'claims', 'corrections', 'exhibits', 'carNumbers']),
  }),
  'report.preview': asking<{ readonly document: string; readonly pages: number; readonly byteLength: number }>()({
    paper,
  }),
  'report.readiness': asking<readonly { readonly line: string; readonly missing: string; readonly place: string }[]>()(
    {},
  ),

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
  'gauge.add': changing({ draft: gaugeDraft }),
  'gauge.amend': changing({ number, draft: gaugeDraft }),
  'gaugeCheck.add': changing({ draft: gaugeCheckDraft }),
  'gaugeCheck.withdraw': changing({ number }),
  'part.set': changing({ entry: partEntry }),
  'claim.add': changing({ draft: claimDraft }),
  'claim.amend': changing({ number, draft: claimDraft }),
  'claim.withdraw': changing({ number }),
  'sheet.take': changing({ sheetId: sheetName }),
  /** A sheet the user wrote: YAML or JSON; refused with what is wrong, line by line. */
  'sheet.takeOwn': changing({ source: photographSource }),
  'sheet.leave': changing({ sheetId: sheetName }),
  'observation.set': changing({ observation }),
  'observation.withdraw': changing({ tell: tellKey }),
  'correction.add': changing({ draft: correctionDraft }),
  'correction.amend': changing({ number, draft: correctionDraft }),
  'correction.withdraw': changing({ number }),
  'exhibit.add': changing({ draft: exhibitDraft }),
  'exhibit.describe': changing({ number, words: exhibitWords }),
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
