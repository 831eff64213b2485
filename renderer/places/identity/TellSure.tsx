import { useId } from 'react'
import { KeyChoice } from '../../parts-of-page/KeyChoice.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'

const STEPS = [
  ['certain', null],
  ['nearly certain', 95],
  ['I think so', 80],
  ['rather so', 65],
] as const
const ANOTHER = 'another share'

/** How sure somebody is, as printed. */
export const sureWords = (surePercent: number | null): string =>
  surePercent === null ? 'certain' : `${surePercent}\u202f% sure`

interface TellSureProps {
  readonly surePercent: number | null
  readonly problem: string | null
  readonly onSure: (surePercent: number | null) => void
  /** A step was taken by its key: the answers come next. */
  readonly onDone: () => void
}

/** How sure one is of what one sees: a few steps, or any share of a hundred. */
export function TellSure({ surePercent, problem, onSure, onDone }: TellSureProps) {
  const field = useId()
  const step = STEPS.find(([, percent]) => percent === surePercent)
  return (
    <>
      <KeyChoice
        label="How sure are you of what you see"
        choices={[
          ...STEPS.map(([words, percent], at) => ({
            choice: words,
            keys: String(at + 1),
            ...(percent === null ? {} : { means: `${percent}\u202f%` }),
          })),
          { choice: ANOTHER, keys: String(STEPS.length + 1) },
        ]}
        value={step === undefined ? ANOTHER : step[0]}
        onChoose={(choice, byKey) => {
          const taken = STEPS.find(([words]) => words === choice)
          if (taken === undefined) document.getElementById(field)?.querySelector('input')?.focus()
          else onSure(taken[1])
          if (taken !== undefined && byKey) onDone()
        }}
        layout="line"
      />
      <div id={field} className="tell-share">
        <NumberField
          label="Sure, of a hundred"
          quantity="plain"
          unit="%"
          least={1}
          most={99}
          value={surePercent}
          onChange={onSure}
          problem={problem}
        />
      </div>
      <p className="note">
        {surePercent === null
          ? 'Certain: how easily the tell is misread, the sheet says itself.'
          : `The value you name counts ${Math.round(surePercent)} of a hundred, the others share the rest.`}
      </p>
    </>
  )
}
