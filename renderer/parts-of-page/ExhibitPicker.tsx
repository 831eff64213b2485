import { useState } from 'react'
import { ToggleButton } from 'react-aria-components/ToggleButton'
import { door } from '../store/door.ts'
import { useRecordStore } from '../store/record-store.ts'
import { TextField } from './TextField.tsx'

/** Exhibit numbers as typed: `E4, 12 e7`. Numbers that are no exhibit of the record are named. */
export function typedExhibits(text: string, known: readonly number[]): { numbers: number[]; unknown: string[] } {
  const words = text.split(/[\s,;]+/).filter((word) => word !== '' && word.toLowerCase() !== 'e')
  const read = words.map((word) => ({ word, number: Number(word.replace(/^e/i, '')) }))
  return {
    numbers: [...new Set(read.filter(({ number }) => known.includes(number)).map(({ number }) => number))],
    unknown: read.filter(({ number }) => !known.includes(number)).map(({ word }) => word),
  }
}

interface ExhibitPickerProps {
  readonly label: string
  readonly value: readonly number[]
  readonly onChange: (numbers: number[]) => void
  readonly problem?: string | null
  /** Exhibits of this panel stand first among the thumbnails. */
  readonly panelId?: string | null
}

/** Cites exhibits: by number, or by their thumbnails. */
export function ExhibitPicker(props: ExhibitPickerProps) {
  const exhibits = useRecordStore((state) => state.record?.exhibits)
  const [typed, setTyped] = useState(props.value.join(' '))
  const known = (exhibits ?? []).map((exhibit) => exhibit.number)
  const read = typedExhibits(typed, known)
  const shown = read.numbers.join() === props.value.join() ? typed : props.value.join(' ')
  const choices = [...(exhibits ?? [])]
    .sort((one, other) => Number(other.panelId === props.panelId) - Number(one.panelId === props.panelId))
    .slice(0, 12)
  return (
    <div className="exhibit-picker">
      <TextField
        label={props.label}
        figures
        value={shown}
        onChange={(text) => {
          setTyped(text)
          props.onChange(typedExhibits(text, known).numbers)
        }}
        hint="numbers, such as 4 12"
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
                {exhibit.kind}
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
