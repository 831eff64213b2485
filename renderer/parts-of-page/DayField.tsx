import { useState } from 'react'
import { Input } from 'react-aria-components/Input'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { FieldFrame, type FieldProps } from './FieldFrame.tsx'

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

function dayOf(year: number, month: number, day: number): string | null {
  const made = new Date(Date.UTC(year, month - 1, day))
  const stands = made.getUTCFullYear() === year && made.getUTCMonth() === month - 1 && made.getUTCDate() === day
  return stands && year > 1799 && year < 2200 ? made.toISOString().slice(0, 10) : null
}

/**
 * A calendar day as typed, or null. Takes the year first (`2026-05-14`, `2026 5 14`, `20260514`) and a month in words
 * (`14 May 2026`, `May 14 2026`). Day and month both in figures without a leading year are refused: they are read both ways.
 */
export function typedDay(text: string): string | null {
  const plain = text.trim().toLowerCase()
  const isoLike = /^(\d{4})[-/. ]?(\d{1,2})[-/. ]?(\d{1,2})$/.exec(plain)
  if (isoLike !== null) return dayOf(Number(isoLike[1]), Number(isoLike[2]), Number(isoLike[3]))
  const words = plain.split(/[\s,.-]+/)
  const month = words.findIndex((word) => months.some((name) => word.startsWith(name)))
  const figures = words.filter((word) => /^\d+$/.test(word)).map(Number)
  if (month < 0 || figures.length !== 2) return null
  const [year, day] = (figures[0] ?? 0) > 31 ? [figures[0], figures[1]] : [figures[1], figures[0]]
  return dayOf(year ?? 0, months.findIndex((name) => words[month]?.startsWith(name)) + 1, day ?? 0)
}

/** Which day of a year or a month is meant, where somebody knows no more than that. */
export type EdgeOfTime = 'first' | 'last'

/** As `typedDay`, and a year or a month as its first or last day: `1961`, `May 1961`, `1961-05`. */
export function typedEdge(text: string, edge: EdgeOfTime): string | null {
  const words = text
    .trim()
    .toLowerCase()
    .split(/[\s,./-]+/)
  const year = Number(words.find((word) => /^\d{4}$/.test(word)))
  const others = words.filter((word) => !/^\d{4}$/.test(word))
  if (others.length !== words.length - 1 || others.length > 1) return typedDay(text)
  const [said] = others
  const named = months.findIndex((name) => said?.startsWith(name)) + 1
  const month = said === undefined ? (edge === 'first' ? 1 : 12) : named > 0 ? named : Number(said)
  if (!(month >= 1 && month <= 12)) return typedDay(text)
  return dayOf(year, month, edge === 'first' ? 1 : new Date(Date.UTC(year, month, 0)).getUTCDate())
}

interface DayFieldProps extends FieldProps<string | null> {
  /** Taken where a year or a month is typed alone; without it a day is asked for. */
  readonly edge?: EdgeOfTime
}

/** A calendar day. `today` is written by typing `t`. */
export function DayField(props: DayFieldProps) {
  const { edge } = props
  const [typed, setTyped] = useState(props.value ?? '')
  const dayIn = (text: string) => (edge === undefined ? typedDay(text) : typedEdge(text, edge))
  const read = dayIn(typed)
  const shown = read === props.value ? typed : (props.value ?? typed)
  const noDay = typed.trim() !== '' && read === null && props.value === null
  const problem =
    props.problem ??
    (noDay ? `Type ${edge === undefined ? '' : 'a year, or '}a day as 2026-05-14 or 14 May 2026.` : null)
  return (
    <AriaTextField
      className="field field-day"
      value={shown}
      onChange={(text) => {
        const today = text.trim().toLowerCase() === 't' ? new Date().toLocaleDateString('sv-SE') : text
        setTyped(today)
        props.onChange(dayIn(today))
      }}
      onBlur={() => setTyped(read ?? typed)}
      isInvalid={problem !== null}
      isDisabled={props.disabled ?? false}
      autoFocus={props.autoFocus ?? false}
      validationBehavior="aria"
    >
      <FieldFrame
        label={props.label}
        hint={
          props.hint ??
          (edge === undefined ? 'year-month-day; t for today' : `a year, a month or a day: its ${edge} day`)
        }
        problem={problem}
      >
        <Input className="field-input figures" autoComplete="off" data-unread={noDay || undefined} />
      </FieldFrame>
    </AriaTextField>
  )
}
