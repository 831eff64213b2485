import { useState } from 'react'
import type { FasteningAnswer, FasteningSample } from '../../../shared-types/fastening-sample.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useAnswer } from '../../store/use-answer.ts'

const begun: FasteningSample = {
  what: 'fastenings with a wrong head, drive or mark',
  ofHowMany: 24,
  looked: 0,
  wrong: 0,
  confidencePercent: 95,
  wantedAtMost: 2,
  positions: [],
  seed: 'first sample',
}

function Answered({ answer, asked }: { readonly answer: FasteningAnswer; readonly asked: FasteningSample }) {
  const { bound, size, positions, drawnBy } = answer
  return (
    <div className="fastening-answer" role="status">
      <p>{bound === null ? `None of the ${asked.ofHowMany} was looked at: nothing is known of them.` : bound.words}</p>
      {bound === null ? null : <p className="under-line">{bound.method}</p>}
      <p>{size === null ? 'That statement holds without looking; ask for a smaller number.' : size.words}</p>
      <p>
        Look at <span className="figures">{positions.join(', ')}</span>
      </p>
      <p className="under-line">{drawnBy}; counted from the front, left before right, unless you name them otherwise</p>
    </div>
  )
}

/** Alike fastenings by sample: what those looked at say of all, how many to look at, and which, drawn at random. */
export function FasteningForm({ onLeave }: { readonly onLeave: () => void }) {
  const [asked, setAsked] = useState(begun)
  const [names, setNames] = useState('')
  const set = (part: Partial<FasteningSample>) => setAsked((before) => ({ ...before, ...part }))
  const positions = names
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
  const { value, problem, busy } = useAnswer('parts.sample', { ...asked, positions })
  useKeys('Fastenings', [{ keys: 'Escape', does: 'put fastenings away', run: onLeave, whileTyping: true }])
  const figure = (label: string, name: 'ofHowMany' | 'looked' | 'wrong' | 'wantedAtMost') => (
    <NumberField
      label={label}
      quantity="plain"
      least={name === 'ofHowMany' ? 1 : 0}
      value={asked[name]}
      onChange={(number) => set({ [name]: Math.round(number ?? 0) })}
    />
  )
  return (
    <Section
      head="Fastenings by sample"
      level="column"
      beside="what a few say of all, exactly"
      action={<ActionKey keys="Escape" label="put away" name="Put fastenings away" onAct={onLeave} />}
    >
      <div className="fastening-fields" aria-busy={busy}>
        <TextField label="What is counted" value={asked.what} onChange={(what) => set({ what })} autoFocus />
        {figure('Alike there', 'ofHowMany')}
        {figure('Looked at', 'looked')}
        {figure('Of those wrong', 'wrong')}
        {figure('Wanted: at most wrong', 'wantedAtMost')}
        <NumberField
          label="Confidence"
          unit="%"
          quantity="plain"
          least={50}
          most={99.9}
          value={asked.confidencePercent}
          onChange={(number) => set({ confidencePercent: number ?? 95 })}
        />
        <TextField label="Positions, if they have names" value={names} onChange={setNames} />
        <TextField label="Drawn by the words" value={asked.seed} onChange={(seed) => set({ seed })} />
      </div>
      <ProblemNote problem={problem} />
      {value === null || problem !== null ? null : <Answered answer={value} asked={asked} />}
    </Section>
  )
}
