import { useEffect, useState } from 'react'
import type { Problem } from '../../../shared-types/problem.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { problemOf } from '../../store/ask.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { verifyChain } from './verify-chain.ts'

interface ChainCheckProps {
  readonly journalNumber: number
  /** How often verifying was asked for; 0 before the first time. */
  readonly times: number
  readonly onVerify: () => void
}

/** Checks the chain of hashes from the first entry to the last. */
export function ChainCheck({ journalNumber, times, onVerify }: ChainCheckProps) {
  const newest = useAnswer('record.journal', { before: null, limit: 1 }, journalNumber)
  const [said, setSaid] = useState<string | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  useEffect(() => {
    if (times === 0) return
    setSaid('checking every entry')
    setProblem(null)
    verifyChain().then(setSaid, (thrown: unknown) => {
      setSaid(null)
      setProblem(problemOf(thrown))
    })
  }, [times])
  return (
    <Section
      head="Is the journal whole?"
      level="column"
      action={<ActionKey keys="V" label="check" name="Check the journal" onAct={onVerify} />}
    >
      <p className="place-note" role="status">
        {said ?? 'Not checked since this place was opened.'}
      </p>
      <ProblemNote problem={problem} />
      <p className="edition-hash">
        SHA-256 of the newest entry <span className="figures">{newest.value?.entries[0]?.hash ?? 'none'}</span>
      </p>
    </Section>
  )
}
