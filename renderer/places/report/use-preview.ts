import { useState } from 'react'
import type { Paper } from '../../../shared-types/edition.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import { ask, problemOf } from '../../store/ask.ts'

interface Made {
  readonly document: string
  readonly paper: Paper
  readonly journalNumber: number
}

/** A preview made when it is asked for, and the word that the record or the paper has changed since. */
export function usePreview(paper: Paper, journalNumber: number) {
  const [made, setMade] = useState<Made | null>(null)
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<Problem | null>(null)
  const make = async () => {
    if (busy) return
    setBusy(true)
    try {
      const { document } = await ask('report.preview', { paper })
      setMade({ document, paper, journalNumber })
      setProblem(null)
    } catch (thrown) {
      setProblem(problemOf(thrown))
    } finally {
      setBusy(false)
    }
  }
  return {
    document: made?.document ?? null,
    stale: made !== null && (made.paper !== paper || made.journalNumber !== journalNumber),
    busy,
    problem,
    make: () => void make(),
  }
}
