import { useState } from 'react'
import type { Edition } from '../../../shared-types/edition.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { problemOf } from '../../store/ask.ts'
import { changesBetween, type NetChange } from './changes-between.ts'
import { DifferenceTable } from './DifferenceTable.tsx'
import { journalSpan } from './read-journal.ts'

const NOW = 'now'

/** The journal row a choice stands for: that of an edition, or the newest one. */
function rowOf(choice: string, editions: readonly Edition[], newest: number): number {
  return editions.find((edition) => String(edition.number) === choice)?.journalNumber ?? newest
}

/** What changed between two editions, or since one of them: net, row by row. */
export function CompareEditions({ record }: { readonly record: RecordView }) {
  const { editions, journalNumber } = record
  const [from, setFrom] = useState(String(editions[0]?.number ?? NOW))
  const [to, setTo] = useState(NOW)
  const [changes, setChanges] = useState<readonly NetChange[] | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  const compare = async () => {
    const ends = [rowOf(from, editions, journalNumber), rowOf(to, editions, journalNumber)]
    const [first, last] = [Math.min(...ends), Math.max(...ends)]
    try {
      setChanges(changesBetween(await journalSpan(first, last), first, last))
      setProblem(null)
    } catch (thrown) {
      setProblem(problemOf(thrown))
    }
  }
  useKeys('Compare', [{ keys: 'C', does: 'compare the two editions chosen', run: () => void compare() }])
  const choices = [...editions.map((edition) => String(edition.number)), NOW]
  const wordsFor = (choice: string) => (choice === NOW ? 'the record as it is now' : `edition ${choice}`)
  if (editions.length === 0) {
    return (
      <Section head="Compare editions" level="column">
        <p className="place-note">
          No edition has been issued yet. Issue one in Report (Alt 9); then what changed since can be listed.
        </p>
      </Section>
    )
  }
  return (
    <Section
      head="Compare editions"
      level="column"
      action={<ActionKey keys="C" label="compare" name="Compare the two editions" onAct={() => void compare()} />}
    >
      <div className="field-row">
        <ChoiceField label="From" choices={choices} wordsFor={wordsFor} value={from} onChange={setFrom} />
        <ChoiceField label="To" choices={choices} wordsFor={wordsFor} value={to} onChange={setTo} />
      </div>
      <ProblemNote problem={problem} />
      <p className="note" role="status">
        {changes === null ? '' : `${changes.length} ${changes.length === 1 ? 'difference' : 'differences'}`}
      </p>
      {(changes ?? []).map((change) => (
        <DifferenceTable
          key={`${change.register} ${change.key}`}
          register={change.register}
          rowKey={change.key}
          before={change.before}
          after={change.after}
        />
      ))}
    </Section>
  )
}
