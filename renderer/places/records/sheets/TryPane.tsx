import { useEffect, useRef, useState } from 'react'
import type { Observation } from '../../../../shared-types/observation.ts'
import type { SheetDraft } from '../../../../shared-types/sheet-desk.ts'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { useAnswer } from '../../../store/use-answer.ts'
import { CanStillBe } from '../../identity/CanStillBe.tsx'
import { EffortFirst } from '../../identity/EffortFirst.tsx'
import { TellList } from '../../identity/TellList.tsx'
import '../../identity/inference.css'

/** What a sheet concludes from answers to its tells, without a record: nothing said here is kept. */
export function TryPane({ name, draft }: { readonly name: string; readonly draft: SheetDraft }) {
  const [said, setSaid] = useState<readonly Observation[]>([])
  const [chosen, setChosen] = useState<string | null>(null)
  const [byEffort, setByEffort] = useState(false)
  const pane = useRef<HTMLDivElement>(null)
  useEffect(() => pane.current?.focus(), [])
  const asked = { name, draft, observations: [...said], chainsOf: chosen === null ? [] : [chosen] }
  const { value: view, problem, busy } = useAnswer('sheets.try', asked)
  const takeBack = (tell: string) => setSaid((before) => before.filter((row) => row.tell !== tell))
  return (
    <section ref={pane} className="try-pane" aria-label="Try the sheet" aria-busy={busy} tabIndex={-1}>
      <p className="note">
        Say what one could see: the sheet answers as it would in a record. Nothing said here is kept.{' '}
        {said.length === 0 ? null : <ActionKey keys="" label="take all back" onAct={() => setSaid([])} />}
      </p>
      <ProblemNote problem={problem} />
      {view === null ? null : (
        <>
          {view.problem === null ? null : <p className="note">{view.problem}</p>}
          <CanStillBe view={view} chosen={chosen} onChoose={setChosen} />
          <EffortFirst byEffort={byEffort} onTurn={setByEffort} />
          <TellList
            tells={view.tells}
            variables={view.variables}
            question={view.question}
            byEffort={byEffort}
            takeBackWord="withdraw"
            mayChange
            trying
            onSay={async (row) => setSaid((before) => [...before.filter(({ tell }) => tell !== row.tell), row])}
            onTakeBack={takeBack}
          />
        </>
      )}
    </section>
  )
}
