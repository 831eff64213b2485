import type { IdentityAnswer, IdentityInput } from '../../shared-types/identity-answer.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { enfsiSupportBands } from '../../shared-types/support-scale.ts'
import type { CarRecord } from '../record/car-record.ts'
import { computeAside } from './computing/compute-aside.ts'
import { identityEvidence, literalsOf } from './identity-evidence.ts'
import { claimViews, conflictViews, likeliestStatements, tellViews, variableViews } from './identity-words.ts'
import { checkObservation } from './observations.ts'
import type { UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'
import { type SheetsOfRecord, sheetsOfRecord } from './sheets-of-record.ts'

const NO_SHEET =
  'No reference sheet is in this record. Take one in that speaks of this car, and the program says what the car can still be.'

/** The published scale as a line, so that every word stands beside its band. */
const SCALE = `Likelihood ratios after ENFSI 2015: ${enfsiSupportBands
  .map(
    ({ from, to, words }) =>
      `${words} ${to === null ? `over ${from.toLocaleString('en')}` : `${from.toLocaleString('en')} to ${to.toLocaleString('en')}`}`,
  )
  .join('; ')}.`

const nothing = {
  legalBuilds: '0',
  buildsLeft: '0',
  variables: [],
  tells: [],
  claims: [],
  conflicts: [],
  repairs: [],
  scale: SCALE,
} as const

/** Observations as recorded, with those asked about in their place. */
function standing(view: RecordView, whatIf: readonly Observation[]): readonly Observation[] {
  const instead = new Map(whatIf.map((row) => [row.tell, row]))
  return [...view.observations.filter(({ tell }) => !instead.has(tell)), ...instead.values()]
}

async function answered(
  view: RecordView,
  observations: readonly Observation[],
  { compiled }: SheetsOfRecord,
  chainsOf: readonly string[] | 'all',
): Promise<{ answer: IdentityAnswer; likeliest: IdentityAnswer | null } | null> {
  if (compiled === null || compiled.model === null) return null
  const asked: IdentityInput = {
    model: compiled.model,
    evidence: identityEvidence(observations, view.claims, compiled),
    question: { about: 'build' },
    statement: null,
    statements: view.claims.flatMap((claim) => {
      const says = literalsOf(claim, compiled)
      return says === null ? [] : [{ id: rowMark('claims', claim.number), says }]
    }),
    options: null,
    builds: 0,
  }
  const answer = await computeAside('identity', asked)
  if (answer.posterior === null) return { answer, likeliest: null }
  const wanted = (id: string) => chainsOf === 'all' || chainsOf.includes(id)
  const statements = likeliestStatements(compiled, answer).filter(({ id }) => wanted(id))
  if (statements.length === 0) return { answer, likeliest: null }
  return { answer, likeliest: await computeAside('identity', { ...asked, statements }) }
}

/** What the car can still be, from everything noted in the record and its own copies of the sheets. */
export async function identityOf(
  record: CarRecord,
  whatIf: readonly Observation[] = [],
  chainsOf: readonly string[] | 'all' = 'all',
): Promise<IdentityView> {
  const view = record.view()
  const sheets = view.sheets.map(({ sheetId, title, edition }) => ({ sheetId, title, edition }))
  const own = await sheetsOfRecord(record)
  const { compiled, problem } = own
  if (sheets.length === 0 || compiled === null || problem !== null)
    return { ...nothing, sheets, problem: sheets.length === 0 ? NO_SHEET : (problem ?? NO_SHEET) }
  for (const row of whatIf) {
    const tell = compiled.tells.find(({ key }) => key === row.tell)
    if (tell !== undefined) checkObservation(row, tell)
  }
  const observations = standing(view, whatIf)
  try {
    const found = await answered(view, observations, own, chainsOf)
    if (found === null) return { ...nothing, sheets, problem: NO_SHEET }
    const { answer, likeliest } = found
    return {
      sheets,
      problem: null,
      legalBuilds: answer.legalBuilds,
      buildsLeft: answer.buildsLeft,
      variables: variableViews(compiled, answer, likeliest, observations),
      tells: tellViews(compiled, answer, observations),
      claims: claimViews(view.claims, compiled, answer, observations),
      ...conflictViews(own, answer, observations),
      scale: SCALE,
    }
  } catch (fault) {
    if (fault instanceof ProblemError) return { ...nothing, sheets, problem: fault.message }
    throw fault
  }
}

export const identityViewUseCases: Pick<UseCases, 'identity.view'> = {
  'identity.view': (program, { whatIf, chainsOf }) => identityOf(program.record(), whatIf, chainsOf),
}
