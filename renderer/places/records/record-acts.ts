import { useEffect, useRef, useState } from 'react'
import type { Problem } from '../../../shared-types/problem.ts'
import { ask, loadRecord, problemOf } from '../../store/ask.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { goToPlace } from '../../store/screen-store.ts'
import { verifyChain } from '../history/verify-chain.ts'

export interface RecordActs {
  /** What is being done now, in words; null when nothing is. */
  readonly doing: string | null
  /** What the last act said; null before the first. */
  readonly said: string | null
  readonly problem: Problem | null
  /** The path that was refused last, so that another way of opening it can be offered. */
  readonly refusedPath: string | null
  readonly open: (path: string, readOnly: boolean) => void
  readonly demonstration: () => void
  readonly backup: () => void
  readonly verify: () => void
  readonly close: () => void
}

/** What can be done to whole records, one at a time, each ending in a sentence or a problem. */
export function useRecordActs(): RecordActs {
  const [doing, setDoing] = useState<string | null>(null)
  const [said, setSaid] = useState<string | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  const [refusedPath, setRefusedPath] = useState<string | null>(null)
  const act = (words: string, path: string | null, run: () => Promise<string | null>) => {
    if (doing !== null) return
    setDoing(words)
    run()
      .then(
        (sentence) => {
          setSaid(sentence)
          setProblem(null)
        },
        (thrown: unknown) => {
          setSaid(null)
          setProblem(problemOf(thrown))
          setRefusedPath(path)
        },
      )
      .finally(() => setDoing(null))
  }
  // False once the reader has gone on to something else: an answer that comes late must not pull him away from it.
  const waited = useRef(true)
  useEffect(() => {
    waited.current = true
    return () => {
      waited.current = false
    }
  }, [])
  const goToWork = async (): Promise<null> => {
    await loadRecord()
    if (waited.current) goToPlace('walk-round')
    return null
  }
  return {
    doing,
    said,
    problem,
    refusedPath,
    open: (path, readOnly) =>
      act('opening', path, async () => {
        await ask('records.open', { path, readOnly })
        return goToWork()
      }),
    demonstration: () =>
      act('opening the demonstration car', null, async () => {
        const { path } = await ask('records.makeDemonstration', {})
        // Who works on another record by now is left at it; the demonstration car stands in the list.
        if (!waited.current && useRecordStore.getState().record !== null) return null
        await ask('records.open', { path, readOnly: false })
        return goToWork()
      }),
    backup: () => act('copying', null, async () => `A copy was made: ${(await ask('record.backup', {})).path}`),
    verify: () => act('checking the journal', null, verifyChain),
    close: () =>
      act('closing', null, async () => {
        await ask('records.close', {})
        useRecordStore.setState({ record: null, panelList: null, keptAt: null })
        return 'The record is closed; it is one file again.'
      }),
  }
}
