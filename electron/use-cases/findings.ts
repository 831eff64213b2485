import type { FindingDraft } from '../../shared-types/finding.ts'
import type { Change, RecordView } from '../../shared-types/record.ts'
import { requireCited } from './citations.ts'
import { numberedRows } from './numbered-rows.ts'
import { lookedAt, panelNameIn, panelStateOf, requirePanel } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowChange } from './send-command.ts'

/** A finding seen, felt or measured shows that the panel was looked at; one told or inferred does not. */
function panelAfter(finding: FindingDraft, now: RecordView, at: string): readonly Change[] {
  const before = panelStateOf(now, finding.panelId)
  const atThePanel = finding.learned !== 'told' && finding.learned !== 'inferred'
  const seen = atThePanel ? lookedAt(before) : before
  if (seen.inspection === before.inspection && seen.metal === before.metal && !before.nothingFound) return []
  return [rowChange('panels', finding.panelId, { ...seen, nothingFound: false, changedAt: at })]
}

const findings = numberedRows({
  register: 'findings',
  command: 'finding',
  noun: 'Finding',
  describe: (finding, now) => `${finding.kind}, ${panelNameIn(now, finding.panelId)}`,
  check: (finding, now) => {
    requirePanel(now, finding.panelId, 'draft.panelId')
    requireCited(now, 'exhibits', finding.exhibits, 'draft.exhibits')
  },
  also: panelAfter,
})

/** What the surveyor concludes at a place. */
export const findingUseCases: Pick<UseCases, 'finding.add' | 'finding.amend' | 'finding.withdraw'> = {
  'finding.add': findings.add,
  'finding.amend': findings.amend,
  'finding.withdraw': findings.withdraw,
}
