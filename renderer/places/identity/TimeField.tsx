import { format, isValid, parse } from 'date-fns'
import { useState } from 'react'
import type { FieldProps } from '../../parts-of-page/FieldFrame.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'

const WRITTEN = 'yyyy-MM-dd HH:mm'

/** A local time as typed, `2026-05-14 10:42`, as an instant in UTC; null when it is none. `now` is this minute. */
export function typedInstant(text: string, now: Date): string | null {
  if (text.trim().toLowerCase() === 'now') return now.toISOString()
  const read = parse(text.trim(), WRITTEN, now)
  return isValid(read) ? read.toISOString() : null
}

const shownAs = (instant: string | null): string => (instant === null ? '' : format(new Date(instant), WRITTEN))

/** A point in time, to the minute, in the time of this machine. */
export function TimeField(props: FieldProps<string | null>) {
  const [typed, setTyped] = useState(shownAs(props.value))
  const wrong = typed.trim() !== '' && typedInstant(typed, new Date()) === null
  return (
    <TextField
      label={props.label}
      figures
      value={typed}
      onChange={(text) => {
        const instant = typedInstant(text, new Date())
        setTyped(text.trim().toLowerCase() === 'now' ? shownAs(instant) : text)
        if (instant !== null || text.trim() === '') props.onChange(instant)
      }}
      hint={props.hint ?? 'year-month-day hour:minute; now'}
      unread={wrong}
      problem={props.problem ?? (wrong ? 'Type a time as 2026-05-14 10:42.' : null)}
    />
  )
}
