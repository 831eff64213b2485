import { useState } from 'react'
import { usePanelNames } from '../store/panel-names.ts'
import { useRecordStore } from '../store/record-store.ts'
import { TextField } from './TextField.tsx'
import { typedCitations } from './typed-citations.ts'

interface FindingPickerProps {
  readonly label: string
  readonly value: readonly number[]
  readonly onChange: (numbers: number[]) => void
  readonly problem?: string | null
}

/** Cites findings by number, and says which each one is. */
export function FindingPicker(props: FindingPickerProps) {
  const findings = useRecordStore((state) => state.record?.findings)
  const nameOf = usePanelNames()
  const [typed, setTyped] = useState(props.value.join(' '))
  const known = (findings ?? []).map((finding) => finding.number)
  const read = typedCitations(typed, 'F', known)
  const shown = read.numbers.join() === props.value.join() ? typed : props.value.join(' ')
  const said = (findings ?? [])
    .filter((finding) => props.value.includes(finding.number))
    .map((finding) => `F ${finding.number} ${finding.kind}, ${nameOf(finding.panelId)}`)
  return (
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
  )
}
