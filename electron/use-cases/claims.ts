import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { requireCited } from './citations.ts'
import { numberedRows } from './numbered-rows.ts'
import type { UseCases } from './program.ts'
import { rowMark, shortened } from './row-marks.ts'

/** A repeated claim is no second witness, so what it repeats must lead back to a first source. */
function checkRepeats(repeats: number | null, now: RecordView, number: number | null): void {
  if (repeats === null) return
  requireCited(now, 'claims', [repeats], 'draft.repeats')
  const met = new Set<number | null>([number])
  for (let next: number | null = repeats; next !== null; ) {
    if (met.has(next)) {
      const message = `A claim cannot repeat itself${next === repeats ? '' : `, here by way of ${rowMark('claims', repeats)}`}. Choose the claim that was made first, or none.`
      throw new ProblemError('rule-of-the-trade', message, { field: 'draft.repeats' })
    }
    met.add(next)
    const at: number = next
    next = now.claims.find((claim) => claim.number === at)?.repeats ?? null
  }
}

const claims = numberedRows({
  register: 'claims',
  command: 'claim',
  noun: 'Claim',
  describe: (claim) => `${shortened(claim.words)}, ${claim.verdict}`,
  check: (claim, now, number) => {
    checkRepeats(claim.repeats, now, number)
    requireCited(now, 'findings', claim.findings, 'draft.findings')
    requireCited(now, 'exhibits', claim.exhibits, 'draft.exhibits')
  },
})

/** What somebody says about the car. */
export const claimUseCases: Pick<UseCases, 'claim.add' | 'claim.amend' | 'claim.withdraw'> = {
  'claim.add': claims.add,
  'claim.amend': claims.amend,
  'claim.withdraw': claims.withdraw,
}
