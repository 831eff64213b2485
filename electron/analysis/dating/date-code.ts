import type { z } from 'zod'
import type { DateCodeAnswer, dateCode } from '../../../shared-types/dating.ts'
import { dayNumber, intervalOf } from './calendar.ts'
import { checkGrammar } from './check-grammar.ts'
import { daysOf } from './date-code-days.ts'
import { matchDateCode, type Said } from './match-date-code.ts'

type Question = z.infer<typeof dateCode.input>

/**
 * One code under several grammars: every reading as an interval of days, and every reading that is impossible with the
 * reason. Work is bounded; `bounded` says when the bound was met.
 * @throws ProblemError when a grammar cannot be followed to an end.
 */
export function readDateCode({ asRead, grammars, notBefore, notAfter }: Question): DateCodeAnswer {
  for (const grammar of grammars) checkGrammar(grammar)
  const readings = new Map<string, DateCodeAnswer['readings'][number]>()
  const impossible = new Map<string, DateCodeAnswer['impossible'][number]>()
  let bounded = false
  for (const grammar of grammars) {
    const { id, label, source } = grammar
    const never = (reading: string, because: string) =>
      impossible.set(JSON.stringify([id, reading, because]), { grammar: id, label, reading, because })
    const matched = matchDateCode(asRead, grammar)
    bounded ||= matched.bounded
    if (matched.why !== null) never(asRead, matched.why)
    for (const said of matched.ways) {
      for (const dated of daysOf(said, grammar)) {
        if ('because' in dated) never(dated.words, dated.because)
        else if (notBefore !== null && dated.span.to < dayNumber(notBefore))
          never(dated.words, `Before ${notBefore}, which is known.`)
        else if (notAfter !== null && dated.span.from > dayNumber(notAfter))
          never(dated.words, `After ${notAfter}, which is known.`)
        else {
          const reading = { grammar: id, label, interval: intervalOf(dated.span), said: said.map(shown), source }
          readings.set(JSON.stringify([id, reading.interval, reading.said]), reading)
        }
      }
    }
  }
  return {
    readings: [...readings.values()].sort((one, other) => one.interval.from.localeCompare(other.interval.from)),
    impossible: [...impossible.values()],
    bounded,
  }
}

const shown = ({ field, text, meaning }: Said) => ({ field, text, meaning })
