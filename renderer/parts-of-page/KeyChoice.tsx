import { useEffect, useRef } from 'react'
import { Label } from 'react-aria-components/Label'
import { Radio, RadioGroup } from 'react-aria-components/RadioGroup'
import { KeyCap } from './KeyCap.tsx'

export interface KeyedChoice<Choice extends string> {
  readonly choice: Choice
  readonly keys: string
  readonly words?: string
  /** A second line: what the choice means, why it cannot be taken. */
  readonly means?: string
}

interface KeyChoiceProps<Choice extends string> {
  readonly label: string
  readonly labelShown?: boolean
  /** Key that goes to this choice from elsewhere in the form. */
  readonly keys?: string
  readonly choices: readonly KeyedChoice<Choice>[]
  readonly value: Choice | null
  /** `byKey` is true when the choice's own key was pressed, so that the form may go on to the next field. */
  readonly onChoose: (choice: Choice, byKey: boolean) => void
  readonly layout: 'rows' | 'columns' | 'line'
  readonly autoFocus?: boolean
  /** Names the group for a form that moves the focus. */
  readonly id?: string
}

/** One of several answers, each with its key, all in sight. Its keys work while the focus is inside. */
export function KeyChoice<Choice extends string>(props: KeyChoiceProps<Choice>) {
  const group = useRef<HTMLDivElement>(null)
  const latest = useRef(props)
  useEffect(() => {
    latest.current = props
  })
  useEffect(() => {
    const element = group.current
    const press = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.altKey || event.metaKey) return
      const found = latest.current.choices.find((keyed) => keyed.keys === event.key.toUpperCase())
      if (found === undefined) return
      event.preventDefault()
      event.stopPropagation()
      latest.current.onChoose(found.choice, true)
    }
    element?.addEventListener('keydown', press, true)
    return () => element?.removeEventListener('keydown', press, true)
  }, [])
  return (
    <RadioGroup
      ref={group}
      {...(props.id === undefined ? {} : { id: props.id })}
      className={`key-choice key-choice-${props.layout}`}
      {...(props.labelShown === false ? { 'aria-label': props.label } : {})}
      value={props.value}
      onChange={(value) => {
        const found = props.choices.find((keyed) => keyed.choice === value)
        if (found !== undefined) props.onChoose(found.choice, false)
      }}
      orientation={props.layout === 'line' ? 'horizontal' : 'vertical'}
    >
      {props.labelShown === false ? null : (
        <span className="field-label">
          <Label>{props.label}</Label>
          {props.keys === undefined ? null : <KeyCap keys={props.keys} />}
        </span>
      )}
      <div className="key-choice-list">
        {props.choices.map((keyed, place) => (
          <Radio
            key={keyed.choice}
            value={keyed.choice}
            className="answer"
            autoFocus={props.autoFocus === true && (props.value === null ? place === 0 : keyed.choice === props.value)}
          >
            <KeyCap keys={keyed.keys} />
            <span className="answer-words">
              {keyed.words ?? keyed.choice}
              {keyed.means === undefined ? null : <small>{keyed.means}</small>}
            </span>
          </Radio>
        ))}
      </div>
    </RadioGroup>
  )
}
