import { CsvError, parse } from 'csv-parse/sync'
import type { ColumnMapping, PastedColumns, PastedSpot } from '../../shared-types/coating-import.ts'
import type { RequestInput } from '../../shared-types/contract.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { thousands } from '../../shared-types/thousands.ts'
import { guessedMapping, readLine } from '../analysis/coating/pasted-columns.ts'
import { boundsOf, flattened, isInside } from '../figures/cubic-path.ts'
import { readOutline } from '../figures/path-text.ts'
import type { Draft } from '../record/car-record.ts'
import { type PlacedPanel, placedPanel } from './coating-question.ts'
import { panelNameIn, requirePanel } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'
import { type Decision, rowChange, sendCommand } from './send-command.ts'

/** Spots taken in by one import; a map of one panel is seldom made of more than some hundreds. */
const MOST_SPOTS = 5000
const PREVIEWED = 12
const REFUSED_NAMED = 50
const SIGNS = { tab: '\t', semicolon: ';', comma: ',' } as const

/** One line that is not empty, with its number in the text. */
interface TextLine {
  readonly line: number
  readonly content: string
}

function cellsOf({ content }: TextLine, { separator }: ColumnMapping): string[] {
  return separator === 'spaces' ? content.trim().split(/\s+/) : quotedCells(content, SIGNS[separator])
}

function quotedCells(content: string, delimiter: string): string[] {
  if (!content.includes('"')) return content.split(delimiter)
  try {
    return (parse(content, { delimiter, relax_quotes: true, relax_column_count: true }) as string[][])[0] ?? []
  } catch (fault) {
    if (fault instanceof CsvError) return content.split(delimiter)
    throw fault
  }
}

interface ReadText {
  readonly columns: PastedColumns
  readonly spots: readonly PastedSpot[]
}

/** Reads pasted text for one panel. Places outside its outline refuse their line. */
function readText(view: RecordView, panelId: PanelId, text: string, chosen: ColumnMapping | null): ReadText {
  requirePanel(view, panelId)
  const rows = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((content, at): TextLine => ({ line: at + 1, content }))
    .filter(({ content }) => content.trim() !== '')
  const mapping = chosen ?? guessedMapping(rows.slice(0, 20).map(({ content }) => content))
  const [first] = rows
  const heads =
    mapping.headed && first !== undefined ? cellsOf(first, mapping) : mapping.columns.map((_, at) => `column ${at + 1}`)
  const body = mapping.headed ? rows.slice(1) : rows
  const inside = outlineOf(placedPanel(view, panelId, []))
  const spots: PastedSpot[] = []
  const refused: { line: number; why: string }[] = []
  if (body.length <= MOST_SPOTS)
    for (const row of body) {
      const { line } = row
      const read = readLine(cellsOf(row, mapping), mapping)
      if ('refused' in read) refused.push({ line, why: read.refused })
      else {
        const at = read.fromEdgesMm === null ? null : inside(read.fromEdgesMm)
        if (at === 'outside') refused.push({ line, why: 'this place lies outside the outline of the panel as drawn' })
        else spots.push({ line, at, where: read.where, values: read.values })
      }
    }
  return {
    spots,
    columns: {
      mapping,
      heads,
      firstLines: body.slice(0, 5).map((row) => cellsOf(row, mapping)),
      lines: body.length,
      spots: spots.length,
      preview: spots.slice(0, PREVIEWED),
      refused: refused.slice(0, REFUSED_NAMED),
      moreRefused: Math.max(0, refused.length - REFUSED_NAMED),
      notes: notesOn(spots),
      problem: problemWith(body.length, spots.length, mapping),
    },
  }
}

/** A place from the panel's left and upper edge into the plan's millimetres, or that it lies outside. */
function outlineOf(placed: PlacedPanel | null) {
  if (placed === null) return () => 'outside' as const
  const outline = flattened(readOutline(placed.panel.outline))
  const box = boundsOf(outline)
  return ({ x, y }: { x: number; y: number }) => {
    const at = { u: box.u + x, v: box.v + y }
    return isInside(outline, [at.u, at.v]) ? at : ('outside' as const)
  }
}

function notesOn(spots: readonly PastedSpot[]): string[] {
  const places = spots.flatMap(({ at }) => (at === null ? [] : [`${at.u} ${at.v}`]))
  const twice = places.length - new Set(places).size
  const single = new Set(spots.flatMap(({ values }) => values.map((value) => JSON.stringify(value))))
  return [
    ...(twice === 0
      ? []
      : [
          `${twice} ${twice === 1 ? 'line stands' : 'lines stand'} at the place of another; each stays a spot of its own.`,
        ]),
    ...(spots.length > 2 && single.size === 1
      ? ['All readings are equal: look whether the gauge was reading at all.']
      : []),
    ...(spots.length > 0 && places.length === 0
      ? ['No line has a place: the spots are kept, and no map can be drawn from them until they have one.']
      : []),
  ]
}

function problemWith(lines: number, spots: number, { columns }: ColumnMapping): string | null {
  if (lines === 0) return 'There is no line of readings in this text.'
  if (lines > MOST_SPOTS)
    return `There are ${thousands(String(lines))} lines, and ${thousands(String(MOST_SPOTS))} go in at a time: import one panel at a time, or take every tenth line of a scan.`
  if (!columns.includes('reading')) return 'Say which column holds the readings.'
  if (columns.includes('across') !== columns.includes('down'))
    return 'A place needs two columns, across and down: name both, or leave both out.'
  return spots === 0
    ? 'No line can be read: see what is refused, and change the decimal sign, the separator or the columns.'
    : null
}

function imported(input: RequestInput<'spots.import'>, { now, take }: Draft): Decision {
  const { panelId, text, mapping, gauge, mode, substrate, readAt } = input
  const { columns, spots } = readText(now, panelId, text, mapping)
  if (columns.problem !== null) throw new ProblemError('input-refused', columns.problem, { field: 'text' })
  if (gauge !== null && !now.gauges.some(({ number }) => number === gauge))
    throw new ProblemError(
      'not-found',
      `There is no ${rowMark('gauges', gauge)} in this record: choose one that is listed.`,
      { field: 'gauge' },
    )
  const view = placedPanel(now, panelId, [])?.view.id ?? 'left'
  const changes = spots.map(({ at, where, values }) => {
    const number = take('spots')
    return rowChange('spots', String(number), {
      number,
      panelId,
      view,
      at,
      where,
      values: [...values],
      enteredIn: mapping.unit,
      gauge,
      mode,
      substrate,
      readAt,
      exhibits: [],
      note: '',
    })
  })
  const left = columns.refused.length + columns.moreRefused
  return {
    changes,
    label: `${spots.length} ${spots.length === 1 ? 'spot' : 'spots'} taken in from columns, ${panelNameIn(now, panelId)}${left === 0 ? '' : `; ${left} ${left === 1 ? 'line' : 'lines'} refused`}`,
  }
}

/** Readings taken in from columns: looked at first, then in by one command, so that one undo takes them all back. */
export const coatingImportUseCases: Pick<UseCases, 'coating.columns' | 'spots.import'> = {
  'coating.columns': async (program, { panelId, text, mapping }) =>
    readText(program.record().view(), panelId, text, mapping).columns,
  'spots.import': (program, input) => sendCommand(program, 'spots.import', input, (draft) => imported(input, draft)),
}
