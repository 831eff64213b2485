import type { Claim } from '../../shared-types/claim.ts'
import type { IdentityClaim, IdentityEvidence, IdentityLiteral } from '../../shared-types/identity-model.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { metricUnits, type ShownUnits } from '../../shared-types/units.ts'
import { measuredLikelihood } from '../analysis/identity/measured-likelihood.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
import { numbersAtTheirWord } from './identity-number-words.ts'
import { type NumberRead, numbersRead, type RowsWithNumbers } from './identity-numbers.ts'
import { rowMark } from './row-marks.ts'

/** Weight of each value of a tell under what was noted; null where it says nothing. */
function seenOf(
  { state, value, surePercent, measured }: Observation,
  tell: CompiledTell,
): Record<string, number> | null {
  if (state === 'seen' && value !== null) return { [value]: 1 }
  if (state === 'believed' && value !== null && surePercent !== null) {
    const sure = surePercent / 100
    const rest = (1 - sure) / Math.max(1, tell.values.length - 1)
    return Object.fromEntries(tell.values.map(({ id }) => [id, id === value ? sure : rest]))
  }
  if (state === 'measured' && measured !== null && tell.tell.follows.kind === 'by cases') {
    const expected = tell.tell.follows.values.flatMap(({ id, measure }) =>
      measure === null ? [] : [[id, measure] as const],
    )
    if (expected.length === 0) return null
    return { ...measuredLikelihood(measured.value, measured.standardUncertainty, Object.fromEntries(expected)) }
  }
  return null
}

/** What a claim says in the model's terms; null when it says nothing in them. */
export function literalsOf(claim: Claim, compiled: CompiledSheets): readonly IdentityLiteral[] | null {
  const known = new Set([
    ...(compiled.model?.variables ?? []).map(({ name }) => name),
    ...(compiled.model?.donors ?? []).map(({ id }) => id),
  ])
  const literals = claim.asserts.map(
    ({ sheetId, variable, values }): IdentityLiteral => [`${sheetId}/${variable}`, values],
  )
  return literals.length > 0 && literals.every(([variable]) => known.has(variable)) ? literals : null
}

function claimEvidence(claim: Claim, compiled: CompiledSheets): IdentityClaim[] {
  const says = literalsOf(claim, compiled)
  const built = new Set(compiled.variables.map(({ key }) => key))
  if (says === null || claim.reliability === null || says.some(([variable]) => !built.has(variable))) return []
  const share = claim.reliability / 100
  const repeats = claim.repeats === null ? null : rowMark('claims', claim.repeats)
  return [{ id: rowMark('claims', claim.number), says, saidWhenTrue: share, saidWhenFalse: 1 - share, repeats }]
}

/** What of a record identity is inferred from, and how it is weighed. */
export interface Noted {
  readonly observations: readonly Observation[]
  readonly numbers: readonly NumberRead[]
  /** The units it is told in. */
  readonly shownIn: ShownUnits
}

type Rows = RowsWithNumbers & { readonly observations: readonly Observation[] }

/** Observations and numbers of a record as its sheets read them. */
export function notedBy({ observations, ...rows }: Rows, compiled: CompiledSheets): Noted {
  const tells = new Map(compiled.tells.map((tell) => [tell.key, tell]))
  const weighed = observations.filter((row) => {
    const tell = tells.get(row.tell)
    return tell !== undefined && seenOf(row, tell) !== null
  })
  const numbers = numbersRead(rows, new Set(weighed.map(({ tell }) => tell)), compiled)
  const { lengthUnit, coatingUnit } = { ...metricUnits, ...rows.commission }
  return { observations, numbers, shownIn: { lengthUnit, coatingUnit } }
}

/** Tells whose marks were read as part of a number that counts. */
export const toldByNumbers = ({ numbers }: Pick<Noted, 'numbers'>): ReadonlySet<string> =>
  new Set(numbers.flatMap(({ likelihood, standsFor }) => (likelihood === null ? [] : standsFor)))

/**
 * What was noted, as the engine's evidence. A claim counts only with a reliability, and one that repeats another is no
 * second witness. What cannot be seen or was disturbed says nothing. Numbers stand for the tells read off the same marks;
 * taken at their word they are asked what cannot all be so.
 */
export function identityEvidence(
  noted: Omit<Noted, 'shownIn'>,
  claims: readonly Claim[],
  compiled: CompiledSheets,
): IdentityEvidence {
  const tells = new Map(compiled.tells.map((tell) => [tell.key, tell]))
  const told = toldByNumbers(noted)
  return {
    readings: noted.observations.flatMap((row) => {
      const tell = tells.get(row.tell)
      const seen = tell === undefined || told.has(row.tell) ? null : seenOf(row, tell)
      return seen === null ? [] : [{ id: row.tell, tell: row.tell, seen }]
    }),
    observations: noted.numbers.flatMap(({ id, of, likelihood }) =>
      likelihood === null ? [] : [{ id, variable: of.key, likelihood: { ...likelihood } }],
    ),
    claims: claims.flatMap((claim) => claimEvidence(claim, compiled)),
    certain: numbersAtTheirWord(noted.numbers, compiled),
  }
}
