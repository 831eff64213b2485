import { LineCounter, parseDocument } from 'yaml'
import { boundInWords } from '../../../shared-types/bound-in-words.ts'
import { type ReferenceSheet, referenceSheet, SHEET_FORM } from '../../../shared-types/reference-sheet.ts'
import { valueAt } from './plain-data.ts'
import { noPlaces, type PlaceOf, problemAt, type SheetPath, type SheetProblem, wordsOfFault } from './sheet-problem.ts'
import { sheetTables } from './sheet-tables.ts'
import { yamlPlaces } from './yaml-places.ts'

/** Most bytes of a sheet as a file. */
export const MOST_SHEET_BYTES = 8 * 1024 * 1024
/** Most entries, counted roughly by the marks that part them: enough for the largest sheet the form allows. */
const MOST_ENTRIES = 400_000
/** Anchors may be repeated this often in all; more is how a small file grows without bounds. */
const MOST_REPEATS = 100
/** Faults listed at once: nobody reads more. */
const MOST_FAULTS = 200

/** A sheet as read: null with the reasons when it is not one. Nothing in it was carried out, whatever it says. */
export interface SheetRead {
  readonly sheet: ReferenceSheet | null
  readonly problems: readonly SheetProblem[]
  readonly placeOf: PlaceOf
}

const refused = (what: string, cure: string, line: number | null = null): SheetRead => ({
  sheet: null,
  problems: [{ severity: 'error', path: [], line, within: null, what, cure }],
  placeOf: noPlaces,
})

/** Reads a reference sheet from YAML 1.2, of which JSON is a part. Never throws for what the bytes say. */
export function readSheet(bytes: Uint8Array): SheetRead {
  if (bytes.byteLength > MOST_SHEET_BYTES)
    return refused(
      `It is ${Math.ceil(bytes.byteLength / 1e6)} MB long; a sheet has ${MOST_SHEET_BYTES / 1024 / 1024} MiB at most.`,
      'Divide it into several sheets that import each other.',
    )
  let text: string
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return refused('It is not text in UTF-8.', 'Save it as UTF-8; a table of a spreadsheet is read as CSV.')
  }
  if (entriesOf(text) > MOST_ENTRIES)
    return refused(`It has more than ${MOST_ENTRIES} entries.`, 'Group values, or divide it into several sheets.')
  const lines = new LineCounter()
  const document = parseDocument(text, { lineCounter: lines, uniqueKeys: true, prettyErrors: false })
  const [fault] = [...document.errors, ...document.warnings]
  if (fault !== undefined)
    return refused(`It cannot be read: ${fault.message}.`, 'Correct the line.', lines.linePos(fault.pos[0]).line)
  let raw: unknown
  try {
    raw = document.toJS({ maxAliasCount: MOST_REPEATS })
  } catch {
    return refused('Its anchors repeat each other too often.', 'Write the entries out.')
  }
  return checkForm(raw, yamlPlaces(document, lines))
}

function entriesOf(text: string): number {
  let entries = 0
  for (let at = 0; at < text.length; at++) {
    const mark = text.charCodeAt(at)
    if (mark === 10 || mark === 44) entries += 1
  }
  return entries
}

/** Checks plain data against the form. A sheet of a later form is refused as such, whatever else it holds. */
export function checkForm(raw: unknown, placeOf: PlaceOf): SheetRead {
  const problem = problemAt(placeOf)
  const form = valueAt(raw, ['form'])
  if (typeof form === 'number' && form > SHEET_FORM) {
    const what = `It is written in form ${form}; this program reads form ${SHEET_FORM}.`
    const cure = 'Use a newer version of the program, or ask for the sheet in the older form.'
    return { sheet: null, problems: [problem(['form'], what, cure)], placeOf }
  }
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return refused('It is no reference sheet.', 'A sheet begins with form, sheetId, title and edition.')
  const checked = referenceSheet.safeParse(raw, { error: boundInWords })
  if (checked.success) return { sheet: checked.data, problems: [], placeOf }
  const problems = checked.error.issues.slice(0, MOST_FAULTS).map((issue) => {
    const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step))
    const { what, cure } = wordsOfFault(issue, valueAt(raw, path), kindsAt(path))
    const [key] = issue.code === 'unrecognized_keys' ? issue.keys : []
    return problem(key === undefined ? path : [...path, key], what, cure)
  })
  return { sheet: null, problems, placeOf }
}

/** What the kind of an entry, or of an entry within one, may be. */
function kindsAt([list, , ...below]: SheetPath): readonly string[] {
  const ofEntry = below.length <= 1
  const table = sheetTables.find(
    (each) => each.keysByKind !== null && each.list === list && (each.within === null) === ofEntry,
  )
  return Object.keys(table?.keysByKind ?? {})
}
