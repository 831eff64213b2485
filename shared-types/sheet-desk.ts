import { z } from 'zod'
import { sheetName } from './sheet-copy.ts'

/** Most letters of a sheet that is being written; what is longer is divided into several sheets. */
export const MOST_SHEET_LETTERS = 7_500_000

const cell = z.string().max(1_000_000)

/**
 * A sheet as somebody is writing it, finished or not, kept letter by letter as typed: the rows of its tables, the cells of
 * a row in the order of the table's columns; or the text of it.
 */
export const sheetDraft = z.discriminatedUnion('written', [
  z.strictObject({
    written: z.literal('as tables'),
    tables: z.record(z.string().max(40), z.array(z.array(cell).max(40)).max(100_000)),
  }),
  z.strictObject({ written: z.literal('as text'), text: z.string().max(MOST_SHEET_LETTERS) }),
])
export type SheetDraft = z.infer<typeof sheetDraft>
export type TablesDraft = Extract<SheetDraft, { written: 'as tables' }>

/** Name of a sheet of one's own: that of its file, without its ending. */
export const ownSheetName = sheetName

/** A sheet in the folder of the user's own. */
export interface OwnSheet {
  readonly name: string
  readonly title: string
  readonly edition: string
  /** `unfinished`: something in it is not yet a sheet; what was written last is kept all the same. */
  readonly state: 'readable' | 'unfinished'
  readonly changedAt: string
  readonly path: string
}

/** One column of a table: its heading, what belongs in it, and what it may hold where that is a closed list. */
export interface ColumnForm {
  readonly heading: string
  readonly says: string
  readonly choices: readonly string[]
  /** Table and column whose contents are the names that may stand here. */
  readonly namesFrom: { readonly table: string; readonly column: string } | null
}

/** One table of the spreadsheet form, with rows of a worked example. */
export interface TableForm {
  readonly name: string
  readonly says: string
  readonly columns: readonly ColumnForm[]
  readonly example: readonly (readonly string[])[]
}

/** Something wrong or doubtful about a draft, and where: cell of a table (row from 0), or line of the text (from 1). */
export interface SheetMessage {
  readonly severity: 'error' | 'warning'
  readonly table: string | null
  readonly row: number | null
  readonly column: string | null
  readonly line: number | null
  readonly what: string
  readonly cure: string
}

/** What the checker says of a draft. `usable`: it could be taken into a record as it stands. */
export interface SheetCheck {
  readonly usable: boolean
  readonly messages: readonly SheetMessage[]
  readonly summary: {
    readonly sheetId: string
    readonly title: string
    readonly edition: string
    readonly variables: number
    readonly rules: number
    readonly tells: number
  } | null
}

/** A draft as it was read or kept; `basis` is named again when it is kept, so that no other window's edit is lost. */
export interface KeptDraft {
  readonly draft: SheetDraft
  readonly basis: string
}

/** A sheet opened to be written on. */
export interface OpenedSheet extends KeptDraft {
  readonly name: string
  readonly path: string
  /** It was written as text and holds comments or an arrangement that tables cannot carry. */
  readonly byHand: boolean
}

/** What bringing tables in from a spreadsheet would do. `draft` is null when something keeps them from being brought in. */
export interface TablesBrought {
  readonly draft: TablesDraft | null
  readonly tables: readonly {
    readonly name: string
    readonly rowsBefore: number
    readonly rowsAfter: number
    /** Rows that are in one and not in the other, compared cell by cell. */
    readonly added: number
    readonly gone: number
  }[]
  /** What keeps them from being brought in. */
  readonly faults: readonly SheetMessage[]
}
