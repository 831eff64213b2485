import { type FocusEvent, type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react'
import type { TellView } from '../../../shared-types/identity-view.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import { shownUnit } from '../../../shared-types/shown-measure.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { useFaultyFirst } from '../../parts-of-page/useFaultyFirst.ts'
import { nameInRecord, useDraftStore } from '../../store/draft-store.ts'
import { useShownUnits } from '../../store/shown-units.ts'
import { TellKeys } from './TellKeys.tsx'
import { type MoreOpen, TellMore } from './TellMore.tsx'
import { PlaceSketch } from './TellSketch.tsx'
import { sureWords } from './TellSure.tsx'
import { TellValues } from './TellValues.tsx'
import { draftOf, observationOf, type TellDraft } from './tell-draft.ts'
import { useJustCome } from './use-just-come.ts'
import './tell-answer.css'

interface TellAnswerProps {
  readonly tell: TellView
  readonly panelNames: string
  /** Answers are tried and not kept: what is typed then is remembered apart. */
  readonly trying: boolean
  /** Nobody opened it: it took the place of one that was answered. */
  readonly cameByItself: boolean
  /** Grows each time the answers are to take the focus; 0: they leave it where it is. */
  readonly focused: number
  /** Keeps what is said; throws the problem it is refused with. */
  readonly onSay: (said: Observation) => Promise<void>
  /** Takes what was said back; null where nothing stands. */
  readonly onTakeBack: (() => void) | null
  readonly onLeave: () => void
}

/** Where and how to look, with the source, beside a sketch of the place where the sheet has one. */
function HowToLook({ tell, panelNames }: Pick<TellAnswerProps, 'tell' | 'panelNames'>) {
  const where = [tell.where, panelNames, tell.access].filter((words) => words !== '').join(' · ')
  return (
    <div className={tell.sketch === null ? '' : 'tell-look'}>
      <div>
        <p>
          {tell.lookAt} {tell.how}
        </p>
        <p className="quiet">{`${where}. ${tell.source}.`}</p>
        {tell.caution === '' ? null : <p className="caution-line">{tell.caution}</p>}
      </div>
      {tell.sketch === null ? null : <PlaceSketch sketch={tell.sketch} />}
    </div>
  )
}

/** A button that has the focus presses itself anew while Enter is held down, and the next tell has the focus by then. */
function pressOnce(event: KeyboardEvent): void {
  if (event.repeat && event.key === 'Enter' && event.target instanceof HTMLButtonElement) event.preventDefault()
}

/**
 * One tell, answered by one key: its values, that it cannot be seen, that it was disturbed. How sure one is, a measured
 * value, exhibits and a note are said before the answer, or amended after it.
 */
export function TellAnswer(props: TellAnswerProps) {
  const { tell, trying, focused, onSay, onTakeBack, onLeave } = props
  const whole = useRef<HTMLFieldSetElement>(null)
  const unlessFaulty = useFaultyFirst(whole)
  const [open, setOpen] = useState<MoreOpen | null>(null)
  const [inside, setInside] = useState(false)
  const name = `${trying ? 'tried' : 'observation'} ${tell.key}`
  const { observation } = tell
  const units = useShownUnits()
  const unit = tell.unit === null ? null : shownUnit(tell.unit, units).unit
  const initial = useMemo(() => draftOf({ observation }), [observation])
  const toAnswers = () => whole.current?.querySelector<HTMLElement>('.tell-value')?.focus()
  const entry = useEntry<TellDraft>({
    name,
    initial,
    keep: (draft) => onSay(observationOf({ key: tell.key, unit }, draft)),
    kept: () => setOpen(null),
  })
  const { draft } = entry
  useEffect(() => {
    if (focused > 0) whole.current?.querySelector<HTMLElement>('.tell-value')?.focus()
  }, [focused])
  // The next tell has the same keys: the second half of a doubled press must not answer it unread. Busy until then.
  const justCome = useJustCome(props.cameByItself)
  const choose = (value: string) => {
    if (justCome) return
    entry.set({ state: 'seen', value })
    void entry.keep()
  }
  const ask = (state: 'cannot be seen' | 'disturbed') => {
    if (justCome) return
    entry.set({ state, value: null })
    setOpen(state)
  }
  const close = () => {
    if (open === 'cannot be seen' || open === 'disturbed' || open === 'measure')
      entry.set({ state: initial.state, value: initial.value })
    setOpen(null)
    toAnswers()
  }
  const done = () => {
    // What was set a moment ago stands in the store before it stands in this picture of the page.
    const { state } = (useDraftStore.getState().drafts[nameInRecord(name)] as TellDraft | undefined) ?? initial
    const kept = open === 'sure' ? state === 'seen' : state !== null
    if (kept) unlessFaulty(() => void entry.keep())
    else close()
  }
  const leaving = (event: FocusEvent<HTMLFieldSetElement>) => {
    if (!event.currentTarget.contains(event.relatedTarget)) setInside(false)
  }
  const cited = draft.exhibits.map((number) => `E\u202f${number}`).join(' ')
  const turn = (more: MoreOpen) => () => (open === more ? close() : setOpen(more))
  return (
    <fieldset
      ref={whole}
      className="tell-answer"
      aria-busy={justCome}
      onFocus={() => setInside(true)}
      onBlur={leaving}
      onKeyDown={pressOnce}
    >
      <legend className="unseen">{tell.name}</legend>
      {inside ? (
        <TellKeys
          tell={tell}
          open={open}
          onValue={choose}
          onState={ask}
          onMore={(more) => setOpen(more)}
          onKeep={done}
          onTakeBack={onTakeBack}
          onLeave={open === null ? onLeave : close}
        />
      ) : null}
      <HowToLook tell={tell} panelNames={props.panelNames} />
      <TellValues tell={tell} state={draft.state} value={draft.value} onValue={choose} onState={ask} />
      <div className="tell-tools">
        <ActionKey keys="S" label={`how sure: ${sureWords(draft.surePercent)}`} onAct={turn('sure')} />
        {unit === null ? null : <ActionKey keys="M" label={`measure, ${unit}`} onAct={turn('measure')} />}
        <ActionKey keys="E" label={cited === '' ? 'exhibits' : `rests on ${cited}`} onAct={turn('exhibits')} />
        <ActionKey keys="T" label={draft.note === '' ? 'note' : 'amend the note'} onAct={turn('note')} />
        {entry.begun && (draft.state !== null || open !== null) ? (
          <ActionKey
            keys="Ctrl+Enter"
            label={entry.busy ? 'keeping' : draft.state === null ? 'done' : 'keep'}
            onAct={done}
          />
        ) : null}
        {onTakeBack === null ? null : <ActionKey keys="Delete" label="withdraw" onAct={onTakeBack} />}
      </div>
      {open === null ? null : <TellMore tell={tell} entry={entry} open={open} onDone={done} />}
      <ProblemNote problem={open === null ? entry.problem : entry.problemOfAll} />
      {entry.begun && draft.state === null && open === null ? (
        <p className="note">What you said so far is kept together with your answer.</p>
      ) : null}
    </fieldset>
  )
}
