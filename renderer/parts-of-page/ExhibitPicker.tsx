import { useState } from 'react'
import { ToggleButton } from 'react-aria-components/ToggleButton'
import { door } from '../store/door.ts'
import { useRecordStore } from '../store/record-store.ts'
import { TextField } from './TextField.tsx'
import { typedCitations } from './typed-citations.ts'

interface ExhibitPickerProps {
  readonly label: string
  readonly value: readonly number[]
  readonly onChange: (numbers: number[]) => void
  readonly problem?: string | null
  readonly autoFocus?: boolean
  /** Exhibits of this panel stand first among the thumbnails. */
  readonly panelId?: string | null
}

/** Cites exhibits: by number, or by their thumbnails. */
export function ExhibitPicker(props: ExhibitPickerProps) {
  const exhibits = useRecordStore((state) => state.record?.exhibits)
  const [typed, setTyped] = useState(props.value.join(' '))
  const known = (exhibits ?? []).map((exhibit) => exhibit.number)
  const read = typedCitations(typed, 'E', known)
  const shown = read.numbers.join() === props.value.join() ? typed : props.value.join(' ')
  const choices = [...(exhibits ?? [])]
    .sort((one, other) => Number(other.panelId === props.panelId) - Number(one.panelId === props.panelId))
    .slice(0, 12)
  return (
    <div className="exhibit-picker">
      <TextField
        label={props.label}
        figures
        autoFocus={props.autoFocus ?? false}
        value={shown}
        onChange={(text) => {
          setTyped(text)
          props.onChange(typedCitations(text, 'E', known).numbers)
        }}
        hint="numbers, such as 4 12"
        unread={read.unknown.length > 0 && shown === typed}
        problem={
          props.problem ??
          (read.unknown.length > 0 ? `There is no exhibit ${read.unknown.join(', ')} in this record.` : null)
        }
      />
      <div className="exhibit-choices">
        {choices.map((exhibit) => (
          <ToggleButton
            key={exhibit.number}
            className="exhibit-choice"
            isSelected={props.value.includes(exhibit.number)}
            onChange={(chosen) =>
              props.onChange(
                chosen ? [...props.value, exhibit.number] : props.value.filter((number) => number !== exhibit.number),
              )
            }
          >
            {exhibit.photograph === null ? (
              <span className="exhibit-kind" aria-hidden="true">
                {exhibit.kind.replace('measure', 'measure\u00ad')}
              </span>
            ) : (
              <img src={door().address(`exhibit/${exhibit.number}/thumbnail`)} alt="" loading="lazy" />
            )}
            <span className="figures">{`E\u202f${exhibit.number}`}</span>
            <span className="unseen"> {exhibit.caption}</span>
          </ToggleButton>
        ))}
      </div>
    </div>
  )
}
