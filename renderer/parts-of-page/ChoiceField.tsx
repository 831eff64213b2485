import { Button } from 'react-aria-components/Button'
import { ListBox, ListBoxItem } from 'react-aria-components/ListBox'
import { Popover } from 'react-aria-components/Popover'
import { Select, SelectValue } from 'react-aria-components/Select'
import { FieldFrame, type FieldProps } from './FieldFrame.tsx'

interface ChoiceFieldProps<Choice extends string> extends FieldProps<Choice> {
  readonly choices: readonly Choice[]
  /** Words shown for a choice; the choice itself where they are left out. */
  readonly wordsFor?: (choice: Choice) => string
  /** Stands in the field while none of the choices is its value. */
  readonly placeholder?: string
}

/** One of several words. Typing selects, arrows move, Enter opens the list. */
export function ChoiceField<Choice extends string>(props: ChoiceFieldProps<Choice>) {
  const problem = props.problem ?? null
  const words = props.wordsFor ?? ((choice: Choice) => choice)
  return (
    <Select
      className="field"
      placeholder={props.placeholder ?? 'none chosen yet'}
      selectedKey={props.value}
      onSelectionChange={(key) => {
        const chosen = props.choices.find((choice) => choice === key)
        if (chosen !== undefined) props.onChange(chosen)
      }}
      isInvalid={problem !== null}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      validationBehavior="aria"
    >
      <FieldFrame label={props.label} hint={props.hint} problem={problem} keyCap={props.keyCap}>
        <Button className="field-input field-choice">
          <SelectValue />
          <span aria-hidden="true" className="field-choice-mark" />
        </Button>
      </FieldFrame>
      <Popover className="choice-list" offset={-1}>
        <ListBox>
          {props.choices.map((choice) => (
            <ListBoxItem key={choice} id={choice} textValue={words(choice)} className="choice-row">
              {words(choice)}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </Select>
  )
}
