import { useState } from 'react'
import { usePanelNames } from '../store/panel-names.ts'
import { useRecordStore } from '../store/record-store.ts'
import { ChoiceField } from './ChoiceField.tsx'
import { TextField } from './TextField.tsx'
import { typedCitations } from './typed-citations.ts'

interface FindingPickerProps {
  readonly label: string
  readonly value: readonly number[]
  readonly onChange: (numbers: number[]) => void
  readonly problem?: string | null
}

/** So much of a note that findings of one kind on one panel are told apart. */
const NOTE_LENGTH = 60

/** The beginning of a note, in whole words. */
function beginningOf(note: string): string {
  return note.length <= NOTE_LENGTH ? note : `${note.slice(0, NOTE_LENGTH + 1).replace(/\s+\S*$/, '')} …`
}

/** Cites findings by number or from the list of them, and says which each one is. */
export function FindingPicker(props: FindingPickerProps) {
  const findings = useRecordStore((state) => state.record?.findings)
  const nameOf = usePanelNames()
  const [typed, setTyped] = useState(props.value.join(' '))
  const known = (findings ?? []).map((finding) => finding.number)
  const read = typedCitations(typed, 'F', known)
  const shown = read.numbers.join() === props.value.join() ? typed : props.value.join(' ')
  const words = new Map(
    (findings ?? []).map(({ number, kind, panelId, note }) => {
      const short = `F\u202f${number} ${kind}, ${nameOf(panelId)}`
      return [`${number}`, { short, long: note === '' ? short : `${short}: ${beginningOf(note)}` }]
    }),
  )
  const said = props.value.flatMap((number) => words.get(`${number}`)?.short ?? [])
  const others = known.filter((number) => !props.value.includes(number)).map(String)
  return (
    <>
      <TextField
        label={props.label}
        figures
        value={shown}
        onChange={(text) => {
          setTyped(text)
          props.onChange(typedCitations(text, 'F', known).numbers)
        }}
        hint={said.length === 0 ? 'numbers, such as 4 12' : said.join('; ')}
        unread={read.unknown.length > 0 && shown === typed}
        problem={
          props.problem ??
          (read.unknown.length > 0 ? `There is no finding ${read.unknown.join(', ')} in this record.` : null)
        }
      />
      {others.length === 0 ? null : (
        <ChoiceField
          label={`${props.label}, from the list`}
          placeholder={`${others.length} of ${known.length} to choose from`}
          choices={others}
          wordsFor={(number) => words.get(number)?.long ?? number}
          value=""
          onChange={(number) => props.onChange([...props.value, Number(number)])}
        />
      )}
    </>
  )
}
