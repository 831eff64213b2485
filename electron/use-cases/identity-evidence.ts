import type { Claim } from '../../shared-types/claim.ts'
import type { IdentityClaim, IdentityEvidence, IdentityLiteral } from '../../shared-types/identity-model.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { measuredLikelihood } from '../analysis/identity/measured-likelihood.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
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

/**
 * What was noted, as the engine's evidence. A claim counts only with a reliability, and one that repeats another is no
 * second witness. What cannot be seen or was disturbed says nothing.
 */
export function identityEvidence(
  observations: readonly Observation[],
  claims: readonly Claim[],
  compiled: CompiledSheets,
): IdentityEvidence {
  const tells = new Map(compiled.tells.map((tell) => [tell.key, tell]))
  return {
    readings: observations.flatMap((row) => {
      const tell = tells.get(row.tell)
      const seen = tell === undefined ? null : seenOf(row, tell)
      return seen === null ? [] : [{ id: row.tell, tell: row.tell, seen }]
    }),
    observations: [],
    claims: claims.flatMap((claim) => claimEvidence(claim, compiled)),
    certain: [],
  }
}
