import { useState } from 'react'
import type { CoatingCitation } from '../../../shared-types/correction.ts'
import type { Spot } from '../../../shared-types/reading.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { rangesFrom, rangesOf } from './spot-ranges.ts'

const NONE = 'none'

interface CoatingCitedProps {
  readonly value: CoatingCitation | null
  readonly problem: string | null
  /** Day of the work, which divides the readings of a panel; null while it is not known. */
  readonly doneOn: string | null
  readonly onChange: (coating: CoatingCitation | null) => void
}

/** Readings of a panel by the day of the work: before it, and from that day on. Without a day all were read before. */
export function dividedByDay(spots: readonly Spot[], panelId: string, doneOn: string | null): CoatingCitation {
  const own = spots.filter((spot) => spot.panelId === panelId && spot.at !== null)
  const isAfter = ({ readAt }: Spot) => doneOn !== null && readAt.slice(0, 10) >= doneOn
  const numbers = (some: readonly Spot[]) => some.map(({ number }) => number)
  return { panelId, before: numbers(own.filter((spot) => !isAfter(spot))), after: numbers(own.filter(isAfter)) }
}

function SpotsField(props: {
  readonly label: string
  readonly known: readonly number[]
  readonly value: readonly number[]
  readonly problem?: string | null
  readonly onChange: (numbers: number[]) => void
}) {
  const [typed, setTyped] = useState(rangesOf(props.value))
  const read = rangesFrom(typed, props.known)
  const shown = rangesOf(read.numbers) === rangesOf(props.value) ? typed : rangesOf(props.value)
  const count = props.value.length
  return (
    <TextField
      label={props.label}
      figures
      hint={count === 0 ? 'numbers, such as 1-20 24' : `${count} ${count === 1 ? 'spot' : 'spots'}, as they stand now`}
      value={shown}
      problem={
        props.problem ??
        (read.unknown.length > 0 ? `No spot with a place on this panel: ${read.unknown.join(', ')}.` : null)
      }
      onChange={(text) => {
        setTyped(text)
        props.onChange(rangesFrom(text, props.known).numbers)
      }}
    />
  )
}

/** Cites the coating of a panel before and after the work; the day of the work divides its readings at first. */
export function CoatingCited({ value, problem, doneOn, onChange }: CoatingCitedProps) {
  const spots = useRecordStore((state) => state.record?.spots) ?? []
  const nameOf = usePanelNames()
  const panels = [...new Set([...spots.filter(({ at }) => at !== null).map(({ panelId }) => panelId)])]
  if (panels.length === 0 && value === null) return null
  const choices = [NONE, ...panels]
  const known = spots.filter(({ panelId, at }) => panelId === value?.panelId && at !== null).map(({ number }) => number)
  return (
    <>
      <ChoiceField
        label="Coating map, before and after"
        choices={choices}
        wordsFor={(choice) => (choice === NONE ? 'no map cited' : nameOf(choice))}
        hint="the day of the work divides the readings; both lists can be changed"
        value={value?.panelId ?? NONE}
        onChange={(choice) => onChange(choice === NONE ? null : dividedByDay(spots, choice, doneOn))}
      />
      {value === null ? null : (
        <>
          <SpotsField
            label="Readings before"
            known={known}
            value={value.before}
            problem={problem}
            onChange={(before) => onChange({ ...value, before })}
          />
          <SpotsField
            label="Readings after"
            known={known}
            value={value.after}
            onChange={(after) => onChange({ ...value, after })}
          />
        </>
      )}
    </>
  )
}
