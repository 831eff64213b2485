import { memo, useCallback, useRef } from 'react'
import type { IdentityWeights, VariableWeights } from '../../../shared-types/identity-weights.ts'
import { thousands } from '../../../shared-types/thousands.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { BySource } from './BySource.tsx'
import { ChainSteps } from './ChainSteps.tsx'
import { dayText } from './day-text.ts'
import { weightBands, weightText, weightWords } from './weight-words.ts'

const LEAST_SHOWN = 0.01
const MOST_LINES = 6
interface VariableBlockProps {
  readonly variable: VariableWeights
  readonly open: boolean
  readonly onOpen: (key: string) => void
}

/** One variable; drawn again only when its weights or its chain are others. */
const VariableBlock = memo(function VariableBlock({ variable, open, onOpen }: VariableBlockProps) {
  const ranked = variable.kind === 'dates' ? variable.values : variable.values.toSorted((a, b) => b.now - a.now)
  const shown = ranked.filter(({ now }) => now >= LEAST_SHOWN).slice(0, MOST_LINES)
  const out = variable.values.filter(({ now, before }) => now === 0 && before > 0).length
  return (
    <div className="can-be">
      <button type="button" className="can-be-head" aria-expanded={open} onClick={() => onOpen(variable.key)}>
        <span className="caps">{variable.name}</span>
        <span className="quiet">
          {variable.span === null ? '' : `${dayText(variable.span.from)} to ${dayText(variable.span.to)} (90\u202f%)`}
        </span>
        <span className="quiet">{open ? 'close' : 'because'}</span>
      </button>
      {shown.map(({ id, name, now }) => (
        <div key={id} className="can-be-row">
          <span>{name}</span>
          <span className="weight-bar" aria-hidden="true">
            <span style={{ width: `${100 * now}%` }} />
          </span>
          <span className="figures">{weightText(now)}</span>
          <span className="quiet">{weightWords(now)}</span>
        </div>
      ))}
      {out === 0 ? null : <p className="quiet">{`${out} ${out === 1 ? 'value' : 'values'} ruled out`}</p>}
      <BySource variable={variable} />
      {open && variable.because !== null ? (
        <ChainSteps steps={variable.because} start={variable.startDecibans} />
      ) : null}
    </div>
  )
})

type Builds = Pick<IdentityWeights, 'legalBuilds' | 'buildsLeft'>

/** How many builds the rules allow, and how many of them could show what was seen. */
const buildsWords = ({ legalBuilds, buildsLeft }: Builds): string =>
  buildsLeft === legalBuilds
    ? `${thousands(legalBuilds)} builds the rules allow`
    : `${thousands(buildsLeft)} of ${thousands(legalBuilds)} builds could show this`

/** What the car can still be: every variable with the weight of its values, and what its likeliest rests on. */
export const CanStillBe = memo(function CanStillBe(props: {
  readonly view: Builds & Pick<IdentityWeights, 'variables'>
  readonly chosen: string | null
  readonly onChoose: (key: string | null) => void
}) {
  const { view, chosen, onChoose } = props
  const now = useRef(chosen)
  now.current = chosen
  const open = useCallback((key: string) => onChoose(key === now.current ? null : key), [onChoose])
  return (
    <Section head="What it can still be" level="column" beside={buildsWords(view)}>
      {view.variables.map((variable) => (
        <VariableBlock key={variable.key} variable={variable} open={variable.key === chosen} onOpen={open} />
      ))}
      <p className="note">{weightBands}</p>
    </Section>
  )
})
