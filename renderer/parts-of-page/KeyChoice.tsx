import { useId, useLayoutEffect, useRef } from 'react'
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
  const own = useId()
  const group = useRef<HTMLDivElement>(null)
  const { autoFocus = false } = props
  const latest = useRef(props)
  useLayoutEffect(() => {
    latest.current = props
  })
  useLayoutEffect(() => {
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
    if (autoFocus) element?.querySelector<HTMLElement>('[data-first]')?.focus()
    return () => element?.removeEventListener('keydown', press, true)
  }, [autoFocus])
  const shownLabel = props.labelShown !== false
  return (
    <div
      ref={group}
      id={props.id}
      className={`key-choice key-choice-${props.layout}`}
      role="radiogroup"
      aria-label={shownLabel ? undefined : props.label}
      aria-labelledby={shownLabel ? `${own}-label` : undefined}
    >
      {shownLabel ? (
        <span className="field-label">
          <span id={`${own}-label`}>{props.label}</span>
          {props.keys === undefined ? null : <KeyCap keys={props.keys} />}
        </span>
      ) : null}
      <div className="key-choice-list">
        {props.choices.map((keyed, place) => (
          <label key={keyed.choice} className="answer">
            <input
              type="radio"
              className="answer-input"
              name={own}
              checked={keyed.choice === props.value}
              onChange={() => props.onChoose(keyed.choice, false)}
              data-first={keyed.choice === props.value || (props.value === null && place === 0) ? '' : undefined}
            />
            <KeyCap keys={keyed.keys} />
            <span className="answer-words">
              {keyed.words ?? keyed.choice}
              {keyed.means === undefined ? null : <small>{keyed.means}</small>}
            </span>
          </label>
        ))}
      </div>
    </div>
  )
}
