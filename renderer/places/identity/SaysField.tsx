import { useEffect, useRef } from 'react'
import { ToggleButton } from 'react-aria-components/ToggleButton'
import type { TermVariable } from '../../../shared-types/sheet-terms.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { type Assertion, termOf } from './claim-words.ts'
import './claim-says.css'

interface ValuesProps {
  readonly term: TermVariable
  readonly values: readonly string[]
  readonly onChange: (values: string[]) => void
}

/** Days: the first and the last of the values it leaves open. */
function Stretch({ term, values, onChange }: ValuesProps) {
  const ids = term.values.map(({ id }) => id)
  const named = (id: string) => term.values.find((value) => value.id === id)?.name ?? id
  const chosen = ids.filter((id) => values.includes(id))
  const [first, last] = [chosen.at(0) ?? ids.at(0) ?? '', chosen.at(-1) ?? ids.at(-1) ?? '']
  const between = (from: string, to: string) => {
    const [one, other] = [ids.indexOf(from), ids.indexOf(to)].toSorted((a, b) => a - b)
    onChange(ids.slice(one, (other ?? 0) + 1))
  }
  return (
    <div className="says-stretch">
      <ChoiceField label="from" choices={ids} wordsFor={named} value={first} onChange={(id) => between(id, last)} />
      <ChoiceField label="to" choices={ids} wordsFor={named} value={last} onChange={(id) => between(first, id)} />
    </div>
  )
}

/** Values of a variable, any number of them: the claim says it is one of these. */
function OneOf({ term, values, onChange }: ValuesProps) {
  return (
    <div className="says-values">
      {term.values.map(({ id, name }) => (
        <ToggleButton
          key={id}
          className="says-value"
          isSelected={values.includes(id)}
          onChange={(chosen) => onChange(chosen ? [...values, id] : values.filter((value) => value !== id))}
        >
          {name}
        </ToggleButton>
      ))}
    </div>
  )
}

interface SaysFieldProps {
  readonly value: readonly Assertion[]
  readonly onChange: (asserts: Assertion[]) => void
  readonly problem: string | null
}

const NOTHING_MORE = 'choose'

/** What a claim says in the terms of the record's sheets: variables, and for each the values the claim leaves it. */
export function SaysField({ value, onChange, problem }: SaysFieldProps) {
  const follows = useRecordStore((state) => state.record?.sheets)
  const { value: terms } = useAnswer('sheets.terms', {}, follows)
  const known = terms ?? []
  const change = (at: number, values: string[]) =>
    onChange(value.map((assertion, place) => (place === at ? { ...assertion, values } : assertion)))
  const left = known.flatMap(({ sheetId, title, variables }) =>
    variables
      .filter(({ variable }) => !value.some((each) => each.sheetId === sheetId && each.variable === variable))
      .map(({ variable, name }) => ({ key: `${sheetId}/${variable}`, sheetId, variable, title, name })),
  )
  // The values of what was just taken up come next, and they stand before the list it was taken from.
  const taken = useRef<string | null>(null)
  const fields = useRef<HTMLFieldSetElement>(null)
  useEffect(() => {
    if (value.length === 0 || taken.current === null) return
    fields.current?.querySelector<HTMLElement>(`[data-says="${taken.current}"] button`)?.focus()
    taken.current = null
  }, [value.length])
  const add = (key: string) => {
    const found = left.find((each) => each.key === key)
    const term = found === undefined ? undefined : termOf(known, found)
    if (found === undefined || term === undefined) return
    const values = term.kind === 'dates' ? term.values.map(({ id }) => id) : []
    taken.current = key
    onChange([...value, { sheetId: found.sheetId, variable: found.variable, values }])
  }
  const words = (key: string) => {
    const found = left.find((each) => each.key === key)
    if (found === undefined) return 'choose'
    return known.length > 1 ? `${found.name}, ${found.title}` : found.name
  }
  return (
    <fieldset ref={fields} className="claim-says">
      <legend className="field-label">What it says in the terms of a sheet</legend>
      {value.map((assertion, at) => {
        const term = termOf(known, assertion)
        const name = term?.name ?? `${assertion.sheetId}/${assertion.variable}`
        return (
          <fieldset
            key={`${assertion.sheetId}/${assertion.variable}`}
            data-says={`${assertion.sheetId}/${assertion.variable}`}
            className="says-variable"
          >
            <legend className="strong">{name}</legend>
            {term === undefined ? (
              <p className="note">No sheet of this record knows it.</p>
            ) : term.kind === 'dates' ? (
              <Stretch term={term} values={assertion.values} onChange={(values) => change(at, values)} />
            ) : (
              <OneOf term={term} values={assertion.values} onChange={(values) => change(at, values)} />
            )}
            <ActionKey
              keys=""
              label="take out"
              name={`Take out: ${name}`}
              onAct={() => onChange(value.filter((_, place) => place !== at))}
            />
          </fieldset>
        )
      })}
      {terms !== null && known.length === 0 ? (
        <p className="note">No reference sheet is in this record. Take one in, and the claim can be put to the test.</p>
      ) : (
        <ChoiceField
          label={value.length === 0 ? 'It speaks of' : 'It also speaks of'}
          choices={[NOTHING_MORE, ...left.map(({ key }) => key)]}
          wordsFor={words}
          value={NOTHING_MORE}
          onChange={add}
          hint="several values of one: it says that it is one of these"
        />
      )}
      {problem === null ? null : <p className="field-problem">{problem}</p>}
    </fieldset>
  )
}
