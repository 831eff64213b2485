import type { TellView } from '../../../shared-types/identity-view.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import { KeyChoice, type KeyedChoice } from '../../parts-of-page/KeyChoice.tsx'

const LETTERS = 'ABDEFGHIJKLOPQRSTUWZ'
const UNSEEN = 'cannot be seen'
const DISTURBED = 'disturbed'

/** An observation with nothing said yet. */
export const unsaid = (tell: string): Observation => ({
  tell,
  state: 'cannot be seen',
  value: null,
  surePercent: null,
  measured: null,
  exhibits: [],
  note: '',
})

function choicesOf({ values }: TellView): readonly KeyedChoice<string>[] {
  return [
    ...values.map(({ id, name, looks }, at) => ({
      choice: id,
      keys: LETTERS[at] ?? '',
      words: name,
      ...(looks === '' ? {} : { means: looks }),
    })),
    { choice: UNSEEN, keys: 'X', words: 'cannot be seen', means: 'stays open' },
    { choice: DISTURBED, keys: 'Y', words: 'disturbed', means: 'there, but it no longer tells of the factory' },
  ]
}

interface TellAnswerProps {
  readonly tell: TellView
  readonly panelNames: string
  readonly onSay: (said: Observation) => void
}

/** One tell: where and how to look, its values as answers, what it rests on. */
export function TellAnswer({ tell, panelNames, onSay }: TellAnswerProps) {
  const choose = (choice: string) => {
    const base = unsaid(tell.key)
    if (choice === UNSEEN || choice === DISTURBED) onSay({ ...base, state: choice })
    else onSay({ ...base, state: 'seen', value: choice })
  }
  const where = [tell.where, panelNames, tell.access].filter((words) => words !== '').join(' · ')
  const said = tell.observation
  const value = said === null ? null : said.state === 'seen' ? said.value : said.state
  return (
    <div className="tell-answer">
      <p>
        {tell.lookAt} {tell.how}
      </p>
      <p className="quiet">{`${where}. ${tell.source}.`}</p>
      {tell.caution === '' ? null : <p className="caution-line">{tell.caution}</p>}
      {tell.sketch === null ? null : (
        <svg className="tell-sketch" viewBox="0 0 100 100" role="img" aria-label={tell.sketch.words}>
          {tell.sketch.paths.map((path) => (
            <path key={path} d={path} />
          ))}
        </svg>
      )}
      <KeyChoice
        label={tell.name}
        labelShown={false}
        choices={choicesOf(tell)}
        value={value}
        onChoose={choose}
        layout="columns"
      />
    </div>
  )
}
