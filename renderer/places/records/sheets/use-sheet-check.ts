import { useEffect, useRef, useState } from 'react'
import type { Problem } from '../../../../shared-types/problem.ts'
import type { SheetCheck, SheetDraft } from '../../../../shared-types/sheet-desk.ts'
import { ask, problemOf } from '../../../store/ask.ts'

const AFTER_MS = 350

/**
 * What the checker says of a draft, a third of a second after the last letter; the last answer stays until the next one
 * comes. `usable` is the draft last checked, where it can be used.
 */
export function useSheetCheck(
  name: string,
  draft: SheetDraft,
): {
  readonly check: SheetCheck | null
  readonly checking: boolean
  readonly problem: Problem | null
  readonly usable: SheetDraft | null
} {
  const [said, setSaid] = useState<{ of: SheetDraft; check: SheetCheck | null; problem: Problem | null } | null>(null)
  const busy = useRef(false)
  const [turn, setTurn] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a turn ends when the check before it does.
  useEffect(() => {
    const waiting = setTimeout(
      () => {
        if (busy.current) return
        busy.current = true
        ask('sheets.check', { name, draft })
          .then(
            (check) => setSaid({ of: draft, check, problem: null }),
            (thrown: unknown) =>
              setSaid((before) => ({ of: draft, check: before?.check ?? null, problem: problemOf(thrown) })),
          )
          .finally(() => {
            busy.current = false
            setTurn((before) => before + 1)
          })
      },
      said === null ? 0 : AFTER_MS,
    )
    if (said?.of === draft) clearTimeout(waiting)
    return () => clearTimeout(waiting)
  }, [name, draft, turn])
  return {
    check: said?.check ?? null,
    checking: said?.of !== draft,
    problem: said?.problem ?? null,
    usable: said?.check?.usable === true ? said.of : null,
  }
}
