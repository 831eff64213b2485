import type { FasteningAnswer, SampleTaken } from '../../../shared-types/fastening-sample.ts'

type Seen = SampleTaken['seen']
const words = ['not looked at', 'right', 'wrong'] as const

interface FasteningAnsweredProps {
  readonly answer: FasteningAnswer
  readonly ofHowMany: number
  readonly seen: Seen
  readonly onSeen: (seen: Seen) => void
}

/** What a sample says of all, and each position drawn with what was found there: Space goes on to the next word. */
export function FasteningAnswered({ answer, ofHowMany, seen, onSeen }: FasteningAnsweredProps) {
  const { bound, size, positions, drawnBy } = answer
  const wordOf = (position: string): (typeof words)[number] => {
    const own = seen.find((each) => each.position === position)
    if (own === undefined) return 'not looked at'
    return own.wrong ? 'wrong' : 'right'
  }
  const turn = (position: string) => {
    const rest = seen.filter((each) => each.position !== position)
    const next = words[(words.indexOf(wordOf(position)) + 1) % words.length]
    const all = next === 'not looked at' ? rest : [...rest, { position, wrong: next === 'wrong' }]
    onSeen(positions.flatMap((each) => all.filter((one) => one.position === each)))
  }
  const left = positions.length - seen.length
  return (
    <>
      <fieldset className="fastening-positions">
        <legend className="caps quiet">look at these</legend>
        {positions.map((position) => (
          <button
            key={position}
            type="button"
            className="fastening-position"
            data-found={wordOf(position)}
            onClick={() => turn(position)}
          >
            <span className="figures">{position}</span> <span>{wordOf(position)}</span>
          </button>
        ))}
      </fieldset>
      <div className="fastening-answer" role="status">
        <p>{bound === null ? `None of the ${ofHowMany} was looked at: nothing is known of them.` : bound.words}</p>
        {bound === null ? null : <p className="under-line">{bound.method}</p>}
        <p>{size === null ? 'That statement holds without looking; ask for a smaller number.' : size.words}</p>
        {seen.length > 0 && left > 0 ? (
          <p>{`${left} of those drawn were not looked at: the bounds hold if it is chance which.`}</p>
        ) : null}
        <p className="under-line">
          {drawnBy}; counted from the front, left before right, unless you name them otherwise
        </p>
      </div>
    </>
  )
}
