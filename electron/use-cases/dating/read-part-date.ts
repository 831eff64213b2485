import type { DateInterval } from '../../../shared-types/dating.ts'
import type { SheetDateCode } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import { readDateCode } from '../../analysis/dating/date-code.ts'
import { datesInWords } from '../../analysis/dating/dates-in-words.ts'
import { readTyreCode } from '../../analysis/dating/tyre-code.ts'
import { sourceText } from '../../sheets/reference/model-draft.ts'

/** A date code of a sheet with the sheet it stands in. */
export interface CodeOfSheet {
  readonly code: SheetDateCode
  readonly sheet: ReferenceSheet
}

/** What the writing on a part can mean, or why nothing. */
export interface PartDateReading {
  /** The stretch of the writing that was read. */
  readonly text: string
  readonly readings: readonly { readonly interval: DateInterval; readonly words: string; readonly source: string }[]
  readonly impossible: readonly string[]
  readonly code: CodeOfSheet | null
  /** Empty when there are readings. */
  readonly why: string
}

/** Marks that could not be read may be filled in up to this many; more leave nothing to go by. */
const MOST_UNREADABLE = 2
const ANY_MARK = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'

export const codeSource = ({ code, sheet }: CodeOfSheet): string =>
  sourceText(sheet.sources.find(({ id }) => id === code.source) ?? null)

/**
 * Reads what is written on a part by every date code the sheets have for it, then as a date in words, then, on tyres, by
 * 49 CFR 574.5. Words around a code are passed over: the longest stretch that reads counts. `?` is an unreadable mark.
 * @param notAfter day the part was seen on: no code means a later one
 */
export function readPartDate(
  asRead: string,
  codes: readonly CodeOfSheet[],
  isTyre: boolean,
  notAfter: string | null,
): PartDateReading {
  const byCode = readByCodes(asRead, codes, notAfter)
  if (byCode.readings.length > 0) return byCode
  const written = datesInWords(asRead)
  if (written.length > 0) {
    const readings = written.map(({ interval, text }) => ({ interval, words: text, source: 'as written' }))
    return { text: asRead, readings, impossible: byCode.impossible, code: null, why: '' }
  }
  return isTyre ? byTyreCode(asRead, notAfter, byCode) : byCode
}

function readByCodes(asRead: string, codes: readonly CodeOfSheet[], notAfter: string | null): PartDateReading {
  const nothing = { text: asRead, readings: [], impossible: [], code: null }
  if (codes.length === 0)
    return { ...nothing, why: 'No reference sheet of this record says how dates on this part are written.' }
  if ((asRead.match(/\?/g)?.length ?? 0) > MOST_UNREADABLE)
    return { ...nothing, why: `More than ${MOST_UNREADABLE} marks are unreadable: too little is left to go by.` }
  let impossible: string[] = []
  for (const stretches of stretchesByLength(asRead)) {
    const answers = stretches.flatMap((text) =>
      codes.map((code) => ({ text, code, ...readings(text, code, notAfter) })),
    )
    const read = answers.filter((answer) => answer.readings.length > 0)
    impossible =
      impossible.length > 0 && read.length === 0 ? impossible : answers.flatMap((answer) => answer.impossible)
    const [first] = read
    if (first === undefined) continue
    return {
      text: [...new Set(read.map(({ text }) => text))].join(' or '),
      readings: distinct(read.flatMap((answer) => answer.readings)),
      impossible: [...new Set(impossible)],
      code: first.code,
      why: '',
    }
  }
  const reasons = [...new Set(impossible)]
  return { ...nothing, impossible: reasons, why: reasons.slice(0, 4).join(' ') }
}

function readings(text: string, { code, sheet }: CodeOfSheet, notAfter: string | null) {
  const source = codeSource({ code, sheet })
  const answers = completions(text).map((each) =>
    readDateCode({ asRead: each, grammars: [code.grammar], notBefore: null, notAfter }),
  )
  const filled = answers.length > 1
  return {
    readings: answers.flatMap((answer) =>
      answer.readings.map(({ interval, said }) => ({
        interval,
        words: `${said.map(({ field, meaning }) => `${field} ${meaning}`).join(', ')} by “${code.grammar.label}”`,
        source,
      })),
    ),
    // Of a code with marks filled in, most fillings are impossible: naming each would say nothing.
    impossible: filled
      ? []
      : answers.flatMap((answer) =>
          answer.impossible.map(({ reading, because }) => `“${reading}” by “${code.grammar.label}”: ${because}`),
        ),
  }
}

/** Every code an unreadable mark can stand for. */
const completions = (text: string): readonly string[] => {
  const at = text.indexOf('?')
  if (at < 0) return [text]
  return [...ANY_MARK].flatMap((mark) => completions(`${text.slice(0, at)}${mark}${text.slice(at + 1)}`))
}

/** Runs of words of a line, those of most characters first. */
function stretchesByLength(line: string): readonly (readonly string[])[] {
  const words = line.split(/[\s,;:()]+/).filter((word) => word !== '')
  const runs = words.flatMap((_, from) => words.slice(from).map((__, more) => words.slice(from, from + more + 1)))
  const lengths = [...new Set(runs.map((run) => run.length))].sort((one, other) => other - one)
  return lengths.map((length) => [...new Set(runs.filter((run) => run.length === length).map((run) => run.join(' ')))])
}

function distinct(all: PartDateReading['readings']): PartDateReading['readings'] {
  return [...new Map(all.map((each) => [`${each.interval.from} ${each.interval.to}`, each])).values()].sort(
    (one, other) => one.interval.from.localeCompare(other.interval.from),
  )
}

function byTyreCode(asRead: string, notAfter: string | null, otherwise: PartDateReading): PartDateReading {
  const group = /(?<![0-9])[0-9]{3,4}(?![0-9])/.exec(asRead)?.[0]
  if (group === undefined) return otherwise
  const answer = readTyreCode({ asRead: group, notBefore: null, notAfter })
  const why = answer.impossible.map(({ reading, because }) => `“${reading}”: ${because}`)
  const read = answer.readings.map(({ interval, week, year }) => ({
    interval,
    words: `week ${week} of ${year}`,
    source: '49 CFR 574.5',
  }))
  return { text: group, readings: read, impossible: why, code: null, why: read.length > 0 ? '' : why.join(' ') }
}
