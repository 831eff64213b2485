import type { z } from 'zod'

/** Where in a sheet something stands: keys and positions from its top. */
export type SheetPath = readonly (string | number)[]

/** What is wrong with a sheet, where, and what to do about it. An `error` keeps the sheet from being used. */
export interface SheetProblem {
  readonly severity: 'error' | 'warning'
  readonly path: SheetPath
  /** Line of the file, from 1; null where the sheet did not come from lines of text. */
  readonly line: number | null
  /** The table it stands in, or the sheet, where there are several. */
  readonly within: string | null
  readonly what: string
  readonly cure: string
}

/** Line, from 1, and table if there are several, where something of a sheet was written; null when it is not known. */
export type PlaceOf = (path: SheetPath) => { readonly line: number; readonly within: string | null } | null
export const noPlaces: PlaceOf = () => null

/** Makes problems that know their line. */
export const problemAt =
  (placeOf: PlaceOf) =>
  (path: SheetPath, what: string, cure: string, severity: SheetProblem['severity'] = 'error'): SheetProblem => ({
    severity,
    path,
    line: null,
    within: null,
    ...placeOf(path),
    what,
    cure,
  })

/** `rules[3].when.series` */
export const pathText = (path: SheetPath): string =>
  path.map((step, at) => (typeof step === 'number' ? `[${step + 1}]` : at === 0 ? step : `.${step}`)).join('')

/** A problem as one sentence and its cure, with its place. */
export function problemText({ path, line, within, what, cure }: SheetProblem): string {
  const place = [within, line === null ? null : `line ${line}`, path.length === 0 ? null : pathText(path)]
  return `${place.filter((each) => each !== null).join(', ') || 'The sheet'}: ${what} ${cure}`
}

type Issue = z.core.$ZodIssue

const kindOf = (value: unknown): string =>
  value === null ? 'nothing' : Array.isArray(value) ? 'a list' : typeof value === 'object' ? 'entries' : typeof value

const wanted: Readonly<Record<string, string>> = {
  string: 'text',
  array: 'a list',
  object: 'entries',
  record: 'entries',
  number: 'a number',
  boolean: 'true or false',
}

/** What a fault of form means to the writer of a sheet, and its cure. `found` is what stands at the place, `kinds` what a kind may be there. */
export function wordsOfFault(
  issue: Issue,
  found: unknown,
  kinds: readonly string[] = [],
): { readonly what: string; readonly cure: string } {
  switch (issue.code) {
    case 'unrecognized_keys':
      return {
        what: `The form knows no “${issue.keys.join('”, “')}” here.`,
        cure: 'Correct the spelling, or take it out.',
      }
    case 'invalid_type':
      if (found === undefined)
        return { what: 'It is missing.', cure: `Add it; it is ${wanted[issue.expected] ?? issue.expected}.` }
      if (issue.expected === 'string' && (typeof found === 'number' || typeof found === 'boolean'))
        return { what: `${String(found)} is read as a ${typeof found}.`, cure: `Put it in quotes: "${String(found)}".` }
      return { what: `It is ${kindOf(found)}.`, cure: `Write ${wanted[issue.expected] ?? issue.expected} here.` }
    case 'invalid_value':
      return {
        what: found === undefined ? 'It is missing.' : `“${String(found)}” is not known here.`,
        cure: `Write one of: ${issue.values.join(', ')}.`,
      }
    case 'invalid_union':
      if (issue.discriminator !== undefined)
        return {
          what: typeof found === 'string' ? `“${found}” is no kind known here.` : 'Its kind is missing.',
          cure: kinds.length === 0 ? 'The published form lists the kinds.' : `Write one of: ${kinds.join(', ')}.`,
        }
      return { what: 'None of the ways to write this fits.', cure: whatFits(issue) }
    case 'invalid_key':
      return { what: 'The name is not well formed.', cure: 'Small letters, figures and dashes, such as build-date.' }
    case 'too_big':
    case 'too_small': {
      const empty = issue.code === 'too_small' && Array.isArray(found) && found.length === 0
      const size = issue.code === 'too_big' ? 'It is too much.' : 'It is too little.'
      return { what: empty ? 'Nothing is listed for it.' : size, cure: `${issue.message.replace(/\.$/, '')}.` }
    }
    case 'invalid_format':
      return issue.format === 'regex'
        ? {
            what: `“${String(found)}” is not well formed.`,
            cure: 'Small letters, figures and dashes, such as build-date.',
          }
        : { what: `“${String(found)}” is not a day.`, cure: 'Write it as 1958-03-31; a day that is in the calendar.' }
    default:
      return { what: `${issue.message.replace(/\.$/, '')}.`, cure: 'Correct it.' }
  }
}

const whatFits = (issue: Extract<Issue, { code: 'invalid_union' }>): string => {
  const ways = issue.errors.flatMap((each) => each.slice(0, 1).map(({ message }) => message))
  return ways.length === 0 ? 'See the published form.' : `One way: ${[...new Set(ways)].join('; another: ')}.`
}
