import { ProblemError } from '../../../shared-types/problem-error.ts'
import { SHEET_FORM } from '../../../shared-types/reference-sheet.ts'
import {
  MOST_SHEET_LETTERS,
  type OwnSheet,
  type SheetDraft,
  type TablesDraft,
} from '../../../shared-types/sheet-desk.ts'
import { readDraft, tablesDraft } from '../../sheets/reference/draft-sheet.ts'
import { problemText } from '../../sheets/reference/sheet-problem.ts'
import { HEAD_TABLE, headingsOf } from '../../sheets/reference/sheet-tables.ts'
import { sheetText } from '../../sheets/reference/sheet-text.ts'
import { shippedSheets } from '../../sheets/reference/shipped-sheets.ts'
import { tableForms } from '../../sheets/reference/table-forms.ts'
import { checkSheetAside } from '../computing/check-sheet-aside.ts'
import { identityBy } from '../identity-view.ts'
import type { Program, UseCases } from '../program.ts'
import { sheetsTogether } from '../sheets-of-record.ts'
import { knownSheets } from './known-sheets.ts'
import {
  folderOfSheets,
  isWrittenByHand,
  keepDraft,
  type LyingSheet,
  lyingSheet,
  namesOfSheets,
  putAway,
} from './sheet-folder.ts'
import { bringTables, carryTables } from './sheet-tables-in-files.ts'

async function lyingThere(program: Program, name: string): Promise<LyingSheet> {
  const lying = await lyingSheet(folderOfSheets(program.recordsFolder), name)
  if (lying !== null) return lying
  throw new ProblemError('not-found', `There is no sheet “${name}” of your own. Choose one that is listed.`, {
    field: 'name',
  })
}

/** Title and edition as far as they are written. */
function headOf({ draft, sheet }: LyingSheet): { readonly title: string; readonly edition: string } {
  if (sheet !== null) return sheet
  const row = draft.written === 'as tables' ? draft.tables[HEAD_TABLE]?.[0] : undefined
  const cell = (heading: string) => row?.[headingsOf(HEAD_TABLE).indexOf(heading)] ?? ''
  return { title: cell('title'), edition: cell('edition') }
}

async function listed(program: Program): Promise<readonly OwnSheet[]> {
  const folder = folderOfSheets(program.recordsFolder)
  const names = await namesOfSheets(folder)
  const lying = await Promise.all(
    names.map(async (name) => ({ name, found: await lyingSheet(folder, name).catch(() => null) })),
  )
  return lying.flatMap(({ name, found }): OwnSheet[] =>
    found === null
      ? []
      : [
          {
            ...{ name, path: found.path, changedAt: found.changedAt },
            title: headOf(found).title || name,
            edition: headOf(found).edition,
            state: found.sheet === null ? 'unfinished' : 'readable',
          },
        ],
  )
}

/** A name for a file and for the sheet, from its title: small letters, figures and dashes. */
const nameFrom = (title: string): string =>
  title
    .normalize('NFD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replaceAll(/^-+|-+$/g, '') || 'sheet'

function emptySheet(title: string, sheetId: string): TablesDraft {
  const cells = { form: String(SHEET_FORM), sheetId, title, edition: '1' } as Readonly<Record<string, string>>
  return {
    written: 'as tables',
    tables: { [HEAD_TABLE]: [headingsOf(HEAD_TABLE).map((heading) => cells[heading] ?? '')] },
  }
}

/** A copy bears the title it was begun with; it stays the same sheet by name, and can so become its next edition. */
function titled(draft: SheetDraft, title: string): SheetDraft {
  if (draft.written === 'as text') {
    const { sheet } = readDraft(draft)
    // Text as the program writes it stays so; what was written by hand keeps its comments.
    const plain = sheet !== null && sheetText(sheet) === draft.text
    const byHand = () => draft.text.replace(/^title:.*$/m, () => `title: ${JSON.stringify(title)}`)
    return { ...draft, text: plain ? sheetText({ ...sheet, title }) : byHand() }
  }
  const at = headingsOf(HEAD_TABLE).indexOf('title')
  const [head = []] = draft.tables[HEAD_TABLE] ?? []
  return {
    ...draft,
    tables: { ...draft.tables, [HEAD_TABLE]: [head.map((cell, column) => (column === at ? title : cell))] },
  }
}

async function copied(
  program: Program,
  { from, name }: { from: 'program' | 'own'; name: string },
): Promise<SheetDraft> {
  if (from === 'own') return (await lyingThere(program, name)).draft
  const shipped = shippedSheets().find(({ sheet }) => sheet.sheetId === name)
  if (shipped !== undefined) return { written: 'as text', text: sheetText(shipped.sheet) }
  throw new ProblemError('not-found', `There is no reference sheet “${name}”. Choose one that is listed.`, {
    field: 'copyOf',
  })
}

/** Sheets of the user's own: written, checked and kept in a folder beside the records. No record is needed for it. */
export const ownSheetUseCases: Pick<
  UseCases,
  | 'sheets.own'
  | 'sheets.forms'
  | 'sheets.begin'
  | 'sheets.read'
  | 'sheets.keep'
  | 'sheets.putAway'
  | 'sheets.check'
  | 'sheets.turn'
  | 'sheets.try'
  | 'sheets.bringTables'
  | 'sheets.carryTables'
> = {
  'sheets.own': listed,
  'sheets.forms': async () => tableForms(),

  'sheets.begin': async (program, { title, copyOf }) => {
    const folder = folderOfSheets(program.recordsFolder)
    const taken = await namesOfSheets(folder)
    const wanted = nameFrom(title)
    const free =
      [wanted, ...taken.map((_, at) => `${wanted}-${at + 2}`)].find((name) => !taken.includes(name)) ?? wanted
    const draft = copyOf === null ? emptySheet(title, free) : titled(await copied(program, copyOf), title)
    await keepDraft(folder, free, draft, null, program.now())
    return { name: free }
  },

  'sheets.read': async (program, { name }) => {
    const lying = await lyingThere(program, name)
    const { draft, sheet, basis, path } = lying
    const byHand = isWrittenByHand(lying)
    if (draft.written === 'as text' && draft.text.length > MOST_SHEET_LETTERS) {
      const message = `“${name}” is ${Math.ceil(draft.text.length / 1e6)} MB long. Divide it into several sheets that import each other.`
      throw new ProblemError('input-refused', message, { field: 'name' })
    }
    return {
      ...{ name, basis, path, byHand },
      draft: sheet === null || byHand ? draft : asTables(sheet, draft),
    }
  },

  'sheets.keep': async (program, { name, draft, basis }) => {
    const keptAt = program.now()
    return { ...(await keepDraft(folderOfSheets(program.recordsFolder), name, draft, basis, keptAt)), keptAt }
  },

  'sheets.putAway': async (program, { name }) => {
    await lyingThere(program, name)
    await putAway(folderOfSheets(program.recordsFolder), name, program.now())
    return null
  },

  'sheets.check': async (program, { name, draft }) => {
    const known = await knownSheets(program.recordsFolder, name)
    return checkSheetAside({ draft, known: [...known.values()] })
  },

  'sheets.try': async (program, { name, draft, observations, chainsOf }) => {
    const { sheet, problems } = readDraft(draft)
    const [first] = problems
    if (sheet === null) {
      const message = `It can be tried once it can be read. ${first === undefined ? '' : problemText(first)}`
      throw new ProblemError('input-refused', message, { field: 'draft' })
    }
    const { sheetId, title, edition } = sheet
    const known = new Map([...(await knownSheets(program.recordsFolder, name)), [sheetId, sheet]])
    const copy = { sheetId, title, edition, sha256: '', byteLength: 0, takenAt: program.now() }
    return identityBy(
      sheetsTogether([sheetId], known),
      { sheets: [copy], observations: [], claims: [], carNumbers: [] },
      { whatIf: observations, chainsOf },
    )
  },

  'sheets.bringTables': bringTables,
  'sheets.carryTables': carryTables,

  'sheets.turn': async (_program, { draft }) => {
    const { sheet, problems } = readDraft(draft)
    if (sheet !== null)
      return draft.written === 'as text' ? tablesDraft(sheet) : { written: 'as text', text: sheetText(sheet) }
    const [first] = problems
    const message = `It cannot be shown the other way until it can be read. ${first === undefined ? '' : problemText(first)}`
    throw new ProblemError('input-refused', message, { field: 'draft' })
  },
}

/** As tables where that is possible: two entries of one name can only be told apart in the text. */
function asTables(sheet: Parameters<typeof tablesDraft>[0], otherwise: SheetDraft): SheetDraft {
  try {
    return tablesDraft(sheet)
  } catch (fault) {
    if (fault instanceof ProblemError) return otherwise
    throw fault
  }
}
