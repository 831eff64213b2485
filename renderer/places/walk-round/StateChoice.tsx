import { useState } from 'react'
import { type PanelDefinition, type PanelState, panelName } from '../../../shared-types/panel.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import {
  type MetalState,
  metalState,
  type NameChoice,
  type PaintState,
  paintState,
} from '../../../shared-types/words.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { KeyChoice } from '../../parts-of-page/KeyChoice.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { change, problemOf } from '../../store/ask.ts'
import { metalKeys, paintKeys } from './keyed-words.ts'
import { leaveEntry } from './walk-store.ts'

interface StateChoiceProps {
  readonly panel: PanelDefinition
  readonly state: PanelState
  readonly names: NameChoice
}

function useSending(): { problem: Problem | null; send: (sending: Promise<unknown>, leave: boolean) => void } {
  const [problem, setProblem] = useState<Problem | null>(null)
  return {
    problem,
    send: (sending, leave) => {
      setProblem(null)
      sending.then(
        () => {
          if (leave) leaveEntry()
        },
        (thrown: unknown) => setProblem(problemOf(thrown)),
      )
    },
  }
}

function ChoiceHead({ panel, names, title }: Omit<StateChoiceProps, 'state'> & { readonly title: string }) {
  return (
    <>
      <div className="sheet-over">
        <span>
          {panel.stop}, {panelName(panel, names)}
        </span>
        <ActionKey keys="Escape" label="leave" onAct={leaveEntry} />
      </div>
      <h2 className="sheet-title">{title}</h2>
    </>
  )
}

/** State of the metal by one letter. What the trade does not allow is refused here, with what may be said instead. */
export function MetalChoice({ panel, state, names }: StateChoiceProps) {
  const { problem, send } = useSending()
  const setMetal = (metal: MetalState) => send(change('panel.setMetal', { panelId: panel.id, metal }), true)
  const setSeen = (backSeen: boolean, magnetVoid: boolean) =>
    send(change('panel.howSeen', { panelId: panel.id, backSeen, magnetVoid }), false)
  useKeys('Metal', [{ keys: 'Escape', does: 'leave', run: leaveEntry }], true)
  return (
    <section className="edit-sheet" aria-label="State of the metal">
      <ChoiceHead panel={panel} names={names} title="State of the metal" />
      <KeyChoice
        label="State of the metal"
        labelShown={false}
        choices={metalKeys}
        value={state.metal}
        onChoose={(metal, byKey) => {
          if (byKey || metal !== state.metal) setMetal(metal)
        }}
        layout="rows"
        autoFocus
      />
      <ProblemNote
        problem={problem}
        onInstead={(choice) => {
          const metal = metalState.safeParse(choice)
          if (metal.success) setMetal(metal.data)
        }}
      />
      <HowSeen state={state} onChange={setSeen} />
      <CautionLines of={panel.cautions} steps={['sanding or cutting']} />
    </section>
  )
}

interface HowSeenProps {
  readonly state: PanelState
  readonly onChange: (backSeen: boolean, magnetVoid: boolean) => void
}

/** What allows one to say that filler stands in place of metal. */
function HowSeen({ state, onChange }: HowSeenProps) {
  useKeys('How the panel was seen', [
    { keys: 'B', does: 'back seen, or not', run: () => onChange(!state.backSeen, state.magnetVoid) },
    { keys: 'V', does: 'magnet void, or not', run: () => onChange(state.backSeen, !state.magnetVoid) },
  ])
  return (
    <div className="how-seen">
      <ActionKey
        keys="B"
        label={state.backSeen ? 'back of the panel seen' : 'back of the panel not seen'}
        onAct={() => onChange(!state.backSeen, state.magnetVoid)}
      />
      <ActionKey
        keys="V"
        label={state.magnetVoid ? 'magnet void noted' : 'no magnet void noted'}
        onAct={() => onChange(state.backSeen, !state.magnetVoid)}
      />
    </div>
  )
}

/** State of the paint by one letter. */
export function PaintChoice({ panel, state, names }: StateChoiceProps) {
  const { problem, send } = useSending()
  const setPaint = (paint: PaintState) => send(change('panel.setPaint', { panelId: panel.id, paint }), true)
  useKeys('Paint', [{ keys: 'Escape', does: 'leave', run: leaveEntry }], true)
  return (
    <section className="edit-sheet" aria-label="State of the paint">
      <ChoiceHead panel={panel} names={names} title="State of the paint" />
      <KeyChoice
        label="State of the paint"
        labelShown={false}
        choices={paintKeys}
        value={state.paint}
        onChoose={(paint, byKey) => {
          if (byKey || paint !== state.paint) setPaint(paint)
        }}
        layout="rows"
        autoFocus
      />
      <ProblemNote
        problem={problem}
        onInstead={(choice) => {
          const paint = paintState.safeParse(choice)
          if (paint.success) setPaint(paint.data)
        }}
      />
    </section>
  )
}
