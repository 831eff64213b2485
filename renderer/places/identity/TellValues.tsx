import type { TellValueView, TellView } from '../../../shared-types/identity-view.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import { useShownUnits } from '../../store/shown-units.ts'
import { measureWords } from './measure-words.ts'
import { TellSketch, useCroppedSketches } from './TellSketch.tsx'
import { valueKey } from './tell-draft.ts'

/** What one measures where it is this value: mean and spread of the built thing as the sheet has them. */
function wordsOfValue({ measure }: TellValueView, unit: string | null, units: ShownUnits): string {
  if (measure === null) return ''
  const spread = Number((2 * measure.standardDeviation).toPrecision(3))
  return measureWords(measure.mean, spread === 0 ? null : spread, unit ?? '', units)
}

function Answer(props: {
  readonly keys: string
  readonly name: string
  readonly words: readonly string[]
  readonly sketch: TellValueView['sketch']
  readonly chosen: boolean
  readonly onChoose: () => void
}) {
  const { keys, name, words, sketch, chosen, onChoose } = props
  return (
    <button type="button" className="tell-value" aria-pressed={chosen} onClick={onChoose}>
      {keys === '' ? null : <KeyCap keys={keys} />}
      {sketch === null ? null : <TellSketch sketch={sketch} className="value-sketch" />}
      <span className="tell-value-name">{name}</span>
      {words
        .filter((line) => line !== '')
        .map((line) => (
          <small key={line}>{line}</small>
        ))}
    </button>
  )
}

interface TellValuesProps {
  readonly tell: TellView
  readonly state: Observation['state'] | null
  readonly value: string | null
  readonly onValue: (value: string) => void
  readonly onState: (state: 'cannot be seen' | 'disturbed') => void
}

/** All answers to a tell in sight, each a large target with its key, and its sketch where the sheet has one. */
export function TellValues({ tell, state, value, onValue, onState }: TellValuesProps) {
  const units = useShownUnits()
  const drawn = tell.values.some(({ sketch }) => sketch !== null)
  const around = useCroppedSketches<HTMLDivElement>()
  return (
    <>
      <div ref={around} className={`tell-values ${drawn ? 'tell-values-drawn' : ''}`}>
        {tell.values.map((one, at) => (
          <Answer
            key={one.id}
            keys={valueKey(at)}
            name={one.name}
            words={[one.looks, wordsOfValue(one, tell.unit, units)]}
            sketch={one.sketch}
            chosen={value === one.id}
            onChoose={() => onValue(one.id)}
          />
        ))}
      </div>
      <div className="tell-values">
        <Answer
          keys="X"
          name="cannot be seen"
          words={['stays open; the reason is asked for']}
          sketch={null}
          chosen={state === 'cannot be seen'}
          onChoose={() => onState('cannot be seen')}
        />
        <Answer
          keys="Y"
          name="disturbed"
          words={['there, but it no longer tells of the factory']}
          sketch={null}
          chosen={state === 'disturbed'}
          onChoose={() => onState('disturbed')}
        />
      </div>
    </>
  )
}
