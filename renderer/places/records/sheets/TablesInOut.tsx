import { useState } from 'react'
import type { Problem } from '../../../../shared-types/problem.ts'
import type { SheetDraft, TableForm, TablesBrought } from '../../../../shared-types/sheet-desk.ts'
import { FileChoice } from '../../../parts-of-page/FileChoice.tsx'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { ask, problemOf } from '../../../store/ask.ts'
import { door } from '../../../store/door.ts'
import { placeWords } from './MessageList.tsx'
import { editSheet } from './sheet-desk-store.ts'

const BY_NAME = ''

async function brought(draft: SheetDraft, files: readonly File[], table: string): Promise<TablesBrought> {
  const tables: { table: string; source: { from: 'upload'; upload: string } }[] = []
  for (const file of files) tables.push({ table, source: { from: 'upload', upload: await door().upload(file) } })
  return ask('sheets.bringTables', { draft, tables })
}

function Preview({ found, onTake }: { readonly found: TablesBrought; readonly onTake: () => void }) {
  return (
    <div role="status">
      {found.draft === null ? null : (
        <ul>
          {found.tables.map(({ name, rowsBefore, rowsAfter, added, gone }) => (
            <li key={name}>
              <span className="strong">{name}</span>{' '}
              {added + gone === 0
                ? `the same ${rowsAfter} rows as before`
                : `${rowsBefore} rows before, ${rowsAfter} after: ${added} new or changed, ${gone} gone or changed`}
            </li>
          ))}
        </ul>
      )}
      {found.faults.map((fault) => (
        <p key={`${placeWords(fault)} ${fault.what}`}>
          <span className="quiet">{placeWords(fault)}</span> <span className="strong">{`! ${fault.what}`}</span>{' '}
          {fault.cure}
        </p>
      ))}
      {found.draft === null ? (
        <p className="note">Nothing was brought in. Mend the files and choose them again.</p>
      ) : (
        <button type="button" className="answer" onClick={onTake}>
          bring these tables in
        </button>
      )}
    </div>
  )
}

/** Tables of a spreadsheet into the sheet, looked at before anything is taken, and out of it into a folder. */
export function TablesInOut(props: {
  readonly name: string
  readonly draft: SheetDraft
  readonly forms: readonly TableForm[]
}) {
  const { name, draft, forms } = props
  const [table, setTable] = useState(BY_NAME)
  const [found, setFound] = useState<TablesBrought | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  const [written, setWritten] = useState<string | null>(null)
  const show = (promise: Promise<void>) => {
    setProblem(null)
    promise.catch((thrown: unknown) => setProblem(problemOf(thrown)))
  }
  const look = (list: readonly File[]) => {
    // Of a folder only its tables: a spreadsheet leaves other files beside them.
    const files = list.filter((file) => list.length === 1 || /\.(csv|tsv|xlsx)$/i.test(file.name))
    if (files.length > 0) show(brought(draft, files, files.length === 1 ? table : BY_NAME).then(setFound))
  }
  const carry = (as: 'one workbook' | 'tables as CSV') => () =>
    show(
      ask('sheets.carryTables', { name, draft, as }).then(({ folder, files }) =>
        setWritten(
          as === 'one workbook'
            ? `${files.join('')} was written into ${folder}: a tab for each table, and one that says how to fill them in. Open it in a spreadsheet, save it, and choose it here.`
            : `${files.length} tables were written into ${folder}. Open them in a spreadsheet, save as CSV, and choose them here.`,
        ),
      ),
    )
  return (
    <Section head="Spreadsheet" level="column" beside="out as .xlsx or CSV, and back in">
      <ProblemNote problem={problem} />
      <div className="tables-out">
        <button type="button" className="answer" onClick={carry('one workbook')}>
          write one workbook (.xlsx)
        </button>
        <button type="button" className="answer" onClick={carry('tables as CSV')}>
          write a CSV file for each table
        </button>
      </div>
      <p className="note" role="status">
        {written}
      </p>
      <label className="tables-in">
        One CSV file holds the table{' '}
        <select value={table} onChange={(event) => setTable(event.target.value)}>
          <option value={BY_NAME}>its name says</option>
          {forms.map((form) => (
            <option key={form.name} value={form.name}>
              {form.name}
            </option>
          ))}
        </select>
      </label>
      <div className="tables-in">
        <FileChoice
          label="choose from a spreadsheet: one .xlsx, or CSV files"
          accept=".xlsx,.csv,.tsv,.txt"
          multiple
          onFiles={look}
        />
      </div>
      {found === null ? null : (
        <Preview
          found={found}
          onTake={() => {
            if (found.draft !== null) editSheet(found.draft, null)
            setFound(null)
          }}
        />
      )}
    </Section>
  )
}
