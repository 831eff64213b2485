import { join } from 'node:path'
import type { Claim } from '../../shared-types/claim.ts'
import type { IdentityInput } from '../../shared-types/identity-answer.ts'
import type { SetAside, SettledQuestion } from '../../shared-types/identity-asking.ts'
import type { IdentityQuestion } from '../../shared-types/identity-model.ts'
import type { IdentityMore } from '../../shared-types/identity-more.ts'
import type { IdentityView, NextLook } from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { enfsiSupportBands } from '../../shared-types/support-scale.ts'
import { thousands } from '../../shared-types/thousands.ts'
import type { CarRecord } from '../record/car-record.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { computeAside } from './computing/compute-aside.ts'
import { claimViews } from './identity-claims.ts'
import { conflictViews } from './identity-conflicts.ts'
import { identityEvidence, literalsOf, notedBy } from './identity-evidence.ts'
import { moreAbout, nothingAsked } from './identity-more.ts'
import { numberViews } from './identity-number-words.ts'
import type { RowsWithNumbers } from './identity-numbers.ts'
import { tellViews } from './identity-tells.ts'
import { variableViews } from './identity-variables.ts'
import { checkObservation } from './observations.ts'
import type { Program, UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'
import { type SheetsOfRecord, sheetsOfRecord } from './sheets-of-record.ts'

const NO_SHEET =
  'No reference sheet is in this record. Take one in that speaks of this car, and the program says what the car can still be.'

/** The published scale as a line, so that every word stands beside its band. */
export const SUPPORT_SCALE = `Likelihood ratios after ENFSI 2015: ${enfsiSupportBands
  .map(
    ({ from, to, words }) =>
      `${words} ${to === null ? `over ${thousands(String(from))}` : `${thousands(String(from))} to ${thousands(String(to))}`}`,
  )
  .join('; ')}.`

const nothing = {
  legalBuilds: '0',
  buildsLeft: '0',
  variables: [],
  tells: [],
  numbers: [],
  claims: [],
  conflicts: [],
  repairs: [],
  question: { about: 'build' },
  more: null,
  scale: SUPPORT_SCALE,
} as const

/** What is tried on a record and not kept. */
type Tried = Pick<AskedOfIdentity, 'whatIf' | 'setAside'>

/** Observations as recorded, without those set aside, and with those asked about in their place; and what else is set aside. */
function standing(
  { observations }: NotedForIdentity,
  { whatIf = [], setAside = { tells: [], numbers: [], parts: [] } }: Tried,
): Pick<NotedForIdentity, 'observations' | 'aside'> {
  const instead = new Map(whatIf.map((row) => [row.tell, row]))
  const gone = new Set([...setAside.tells, ...instead.keys()])
  return {
    observations: [...observations.filter(({ tell }) => !gone.has(tell)), ...instead.values()],
    aside: setAside,
  }
}

/** What is asked of a record's sheets beyond what it holds. */
export interface AskedOfIdentity {
  /** Observations that stand in for what is recorded of their tells. */
  readonly whatIf?: readonly Observation[]
  /** Recorded observations and numbers this answer does without. */
  readonly setAside?: SetAside | undefined
  /** Variables whose because-chain is wanted; all when left out. */
  readonly chainsOf?: readonly string[] | null
  /** Claims whose because-chain is wanted; all when left out. */
  readonly claimChains?: readonly number[] | null
  /** What the next looks should settle. */
  readonly question?: SettledQuestion
  /** Whether what comes after the weights is wanted with them. */
  readonly more?: boolean
  /** Folder where compiled sheets are kept; nowhere when left out. */
  readonly shelf?: string | null
}

/** What the engine is asked about a claim or a variable; the whole build when the sheets have no word for it. */
function engineQuestion(asked: SettledQuestion, claims: readonly Claim[], compiled: CompiledSheets): IdentityQuestion {
  if (asked.about === 'variable' && compiled.variables.some(({ key }) => key === asked.variable)) return asked
  if (asked.about !== 'claim') return { about: 'build' }
  const claim = claims.find(({ number }) => number === asked.claim)
  const says = claim === undefined ? null : literalsOf(claim, compiled)
  return says === null ? { about: 'build' } : { about: 'statement', says }
}

/** What the car can still be, from everything noted in the record and its own copies of the sheets. */
export const identityOf = async (record: CarRecord, asked: AskedOfIdentity = {}): Promise<IdentityView> =>
  identityBy(await sheetsOfRecord(record), record.view(), asked)

/** What of a record identity is inferred from. */
export type NotedForIdentity = Pick<RecordView, 'sheets' | 'observations' | 'claims'> & RowsWithNumbers

/** The same by any sheets, whether a record holds them or not. `view.sheets` are those named in the answer. */
export async function identityBy(
  own: SheetsOfRecord,
  view: NotedForIdentity,
  {
    whatIf = [],
    setAside,
    chainsOf = null,
    claimChains = null,
    question = { about: 'build' },
    more = false,
    shelf = null,
  }: AskedOfIdentity = {},
): Promise<IdentityView> {
  const sheets = view.sheets.map(({ sheetId, title, edition }) => ({ sheetId, title, edition }))
  const { compiled, problem } = own
  if (sheets.length === 0 || compiled === null || compiled.model === null || problem !== null)
    return { ...nothing, sheets, problem: sheets.length === 0 ? NO_SHEET : (problem ?? NO_SHEET) }
  for (const row of whatIf) {
    const tell = compiled.tells.find(({ key }) => key === row.tell)
    if (tell !== undefined) checkObservation(row, tell)
  }
  const noted = notedBy({ ...view, ...standing(view, { whatIf, setAside }) }, compiled)
  const evidence = identityEvidence(noted, view.claims, compiled)
  const statements = claimStatements(view.claims, compiled)
  const asked: IdentityInput = {
    ...nothingAsked,
    model: compiled.model,
    evidence,
    question: engineQuestion(question, view.claims, compiled),
    statements: statements.map(({ id, says }) => ({ id, says })),
    chains: claimChains?.map((number) => rowMark('claims', number)) ?? null,
    likeliest: chainsOf ?? compiled.variables.map(({ key }) => key),
  }
  try {
    const answer = await computeAside('identity', asked, { keeps: { field: 'model', key: own.key }, shelf })
    return {
      sheets,
      problem: null,
      legalBuilds: answer.legalBuilds,
      buildsLeft: answer.buildsLeft,
      variables: variableViews(compiled, answer, noted),
      tells: tellViews(compiled, answer, noted),
      numbers: numberViews(noted, compiled),
      claims: claimViews(view.claims, compiled, answer, noted),
      ...conflictViews(own, answer, noted),
      question,
      more: more ? await moreAbout({ own, compiled, evidence, statements, noted, shelf }) : null,
      scale: SUPPORT_SCALE,
    }
  } catch (fault) {
    if (fault instanceof ProblemError) return { ...nothing, sheets, problem: fault.message }
    throw fault
  }
}

/** What comes after the weights; null when there is no sheet to ask. */
async function moreOf(record: CarRecord, tried: Tried, shelf: string | null): Promise<IdentityMore | null> {
  const view = record.view()
  const own = await sheetsOfRecord(record)
  const { compiled, problem } = own
  if (compiled === null || compiled.model === null || problem !== null) return null
  const noted = notedBy({ ...view, ...standing(view, tried) }, compiled)
  const evidence = identityEvidence(noted, view.claims, compiled)
  const statements = claimStatements(view.claims, compiled)
  return moreAbout({ own, compiled, evidence, statements, noted, shelf })
}

/** Claims that say something in the terms of the sheets. */
const claimStatements = (claims: readonly Claim[], compiled: CompiledSheets) =>
  claims.flatMap((claim) => {
    const says = literalsOf(claim, compiled)
    return says === null ? [] : [{ id: rowMark('claims', claim.number), claim: claim.number, says }]
  })

/** Where a program keeps compiled sheets for its next run. */
export const shelfOf = ({ recordsFolder }: Program): string => join(recordsFolder, '.compiled-sheets')

const LOOKS_NAMED = 3

/** Looks of what was answered last, so that a change that says nothing of the car's identity asks nothing anew. */
let lastLooks: { readonly key: string; readonly looks: readonly NextLook[] } | null = null

/** The looks worth most now, whatever place is open. */
async function nextLooks(record: CarRecord, shelf: string): Promise<readonly NextLook[]> {
  const { sheets, observations, claims, carNumbers, parts } = record.view()
  if (sheets.length === 0) return []
  const read = parts.map(({ partId, numberAsRead, learned }) => [partId, numberAsRead, learned])
  const key = JSON.stringify([sheets.map(({ sha256 }) => sha256), observations, claims, carNumbers, read])
  if (lastLooks?.key === key) return lastLooks.looks
  const { tells } = await identityOf(record, { chainsOf: [], claimChains: [], shelf })
  const looks = tells
    .filter(({ bits }) => bits !== null && bits > 0)
    .slice(0, LOOKS_NAMED)
    .map(({ key: tell, name, lookAt, bits }) => ({
      tell,
      name,
      reason: `${lookAt} ${bits?.toFixed(2)} bit of the whole build.`,
    }))
  lastLooks = { key, looks }
  return looks
}

export const identityViewUseCases: Pick<UseCases, 'identity.view' | 'identity.more' | 'looks.next'> = {
  'identity.view': (program, { whatIf, setAside, chainsOf, question }) =>
    identityOf(program.record(), {
      whatIf,
      setAside,
      chainsOf,
      question: question ?? { about: 'build' },
      shelf: shelfOf(program),
    }),
  'identity.more': (program, tried) => moreOf(program.record(), tried, shelfOf(program)),
  'looks.next': (program) => nextLooks(program.record(), shelfOf(program)),
}
