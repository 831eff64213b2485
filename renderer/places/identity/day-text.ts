import { format, parseISO } from 'date-fns'

/** A calendar day as printed, "9 November 2026"; what is not dated is called so. */
export const dayText = (day: string | null): string =>
  day === null ? 'not dated' : format(parseISO(day), 'd MMMM yyyy')

/** A point in time as printed, "14 May 2026, 10:42", in the time of this machine. */
export const timeText = (instant: string): string => format(parseISO(instant), 'd MMM yyyy, HH:mm')
