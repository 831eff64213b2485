import { useState } from 'react'
import type { InterchangeRow, PartCarrier } from '../../../shared-types/part-expectation.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useAnswer } from '../../store/use-answer.ts'

const ANY = 'any car'

function years({ from, until }: PartCarrier): string {
  const [first, last] = [from?.slice(0, 4), until?.slice(0, 4)]
  if (first !== undefined && last !== undefined) return `${first} to ${last}`
  if (first !== undefined) return `from ${first}`
  return last === undefined ? 'years not known' : `until ${last}`
}

/** How a row stands to this car, in words; what was not looked at is never taken to agree. */
function standing({ belongsPercent, match }: InterchangeRow): string {
  const belongs =
    belongsPercent === null
      ? 'the sheet names no builds for it'
      : belongsPercent < 1
        ? 'this car was not built with it'
        : belongsPercent > 99
          ? 'this car was built with it'
          : `this car was built with it by ${Math.round(belongsPercent)}\u202f%`
  const found =
    match === 'agrees' ? 'what was found is this part' : match === 'differs' ? 'what was found is not' : 'not seen'
  return `${belongs}; ${found}`
}

function Row({ row }: { readonly row: InterchangeRow }) {
  return (
    <div className="interchange-row">
      <div>
        <p>
          <strong>{row.partName}</strong>: {row.name}
        </p>
        <p className="quiet">
          Belongs to: {row.on}; {standing(row)}.
        </p>
        {row.because === '' ? null : <p className="note">{row.because}</p>}
        <p className="under-line">{row.source}</p>
      </div>
      <table className="carriers">
        <caption className="unseen">Cars that carried {row.name}</caption>
        <tbody>
          {row.carriers.map((carrier) => (
            <tr key={carrier.line}>
              <td>
                {carrier.line}
                <span className="under-line figures">{years(carrier)}</span>
              </td>
              <td>{carrier.altered === '' ? 'what is altered is not said' : carrier.altered}</td>
              <td className="quiet">{carrier.toldBy === '' ? '' : `told by ${carrier.toldBy}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** Interchange, searched both ways: what else carried a part, and which parts of this car another car carried. */
export function Interchange(props: {
  /** Part in hand: only its rows are shown, until it is left. */
  readonly partId: string | null
  readonly follows: number
  readonly onLeave: () => void
}) {
  const [words, setWords] = useState('')
  const [line, setLine] = useState(ANY)
  const asked = { partId: props.partId, line: line === ANY ? '' : line }
  const { value, problem, busy } = useAnswer('parts.interchange', asked, props.follows)
  useKeys('Interchange', [{ keys: 'Escape', does: 'put interchange away', run: props.onLeave, whileTyping: true }])
  const wanted = words.trim().toLowerCase()
  const rows = (value?.rows ?? []).filter(
    ({ partName, partId, name }) => wanted === '' || `${partName} ${partId} ${name}`.toLowerCase().includes(wanted),
  )
  return (
    <Section
      head="Interchange"
      level="column"
      beside={props.partId === null ? 'of every part' : 'of the part in hand'}
      action={<ActionKey keys="Escape" label="put away" name="Put interchange away" onAct={props.onLeave} />}
    >
      <div className="interchange-search" aria-busy={busy}>
        <TextField label="Part" value={words} onChange={setWords} autoFocus />
        <ChoiceField label="Carried also by" choices={[ANY, ...(value?.lines ?? [])]} value={line} onChange={setLine} />
      </div>
      <ProblemNote problem={problem} />
      {value?.problem ? <p className="note">{value.problem}</p> : null}
      {value !== null && value.problem === null && rows.length === 0 ? (
        <p className="note">Nothing in the sheets answers to this. That no other car carried it is not said.</p>
      ) : null}
      {rows.map((row) => (
        <Row key={row.id} row={row} />
      ))}
    </Section>
  )
}
