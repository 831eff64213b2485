import { useState } from 'react'
import type { SheetMessage, TableForm, TablesDraft } from '../../../../shared-types/sheet-desk.ts'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { useKeys } from '../../../parts-of-page/useKeys.ts'
import { editSheet, endEdit } from './sheet-desk-store.ts'
import { suggestionsFor } from './suggestions.ts'
import { TableGrid } from './TableGrid.tsx'
import { TableNames } from './TableNames.tsx'
import { type CellPlace, rowsIn, withCells, withoutRow, withRowBefore, withRowMoved } from './table-edits.ts'

/** Cell of a table. */
export interface TablePlace extends CellPlace {
  readonly table: string
}

interface SheetTablesProps {
  readonly forms: readonly TableForm[]
  readonly draft: TablesDraft
  readonly messages: readonly SheetMessage[]
  readonly at: TablePlace
  readonly onGo: (place: TablePlace) => void
}

/** A row of the example, in quiet ink, where a table is empty. */
function Example({ form, onCopy }: { readonly form: TableForm; readonly onCopy: () => void }) {
  const [row] = form.example
  if (row === undefined) return null
  return (
    <div className="sheet-example">
      <p className="quiet">For example, from another sheet:</p>
      <dl>
        {form.columns.flatMap(({ heading }, column) =>
          (row[column] ?? '') === ''
            ? []
            : [
                <div key={heading}>
                  <dt>{heading}</dt>
                  <dd className="figures">{row[column]}</dd>
                </div>,
              ],
        )}
      </dl>
      <ActionKey keys="Alt+E" label="copy this line to begin with" onAct={onCopy} />
    </div>
  )
}

/** A sheet as its tables: their names, one of them as a grid, and what belongs in the cell in hand. */
export function SheetTables({ forms, draft, messages, at, onGo }: SheetTablesProps) {
  const [pressed, setPressed] = useState(0)
  const form = forms.find(({ name }) => name === at.table) ?? forms[0]
  const column = form?.columns[at.column]
  const rows = rowsIn(draft, at.table)
  const text = rows[at.row]?.[at.column] ?? ''
  const about = `${at.table} ${at.row} ${at.column}`
  const suggestions = column === undefined ? [] : suggestionsFor(draft, forms, column, text)
  const own = messages.filter(({ table }) => table === at.table)
  const here = own.filter(({ row, column: heading }) => row === at.row && heading === column?.heading)
  const turnTo = (by: number) => {
    const next = forms[forms.findIndex(({ name }) => name === at.table) + by]
    if (next !== undefined) go({ table: next.name, row: 0, column: 0 })
  }
  const go = (place: TablePlace) => {
    endEdit()
    onGo(place)
  }
  const take = (suggestion: string | undefined) => {
    if (form === undefined || suggestion === undefined) return
    editSheet(withCells(draft, form, at, [[suggestion]]), null)
    setPressed(pressed + 1)
  }
  const act = (run: (table: TableForm) => TablesDraft) => () => {
    if (form !== undefined) editSheet(run(form), null)
  }
  const copyExample = act((table) => withCells(draft, table, { row: 0, column: 0 }, table.example.slice(0, 1)))
  const move = (by: 1 | -1) => () => {
    if (form === undefined || rows[at.row] === undefined || rows[at.row + by] === undefined) return
    editSheet(withRowMoved(draft, form, at.row, by), null)
    go({ ...at, row: at.row + by })
  }
  useKeys('Tables of the sheet', [
    { keys: 'Alt+PageDown', does: 'next table', run: () => turnTo(1), whileTyping: true },
    { keys: 'Alt+PageUp', does: 'table before', run: () => turnTo(-1), whileTyping: true },
    { keys: 'Ctrl+Space', does: 'take the first name offered', run: () => take(suggestions[0]), whileTyping: true },
    {
      keys: 'Ctrl+Enter',
      does: 'a line before this one',
      run: act((table) => withRowBefore(draft, table, at.row)),
      whileTyping: true,
    },
    {
      keys: 'Ctrl+Delete',
      does: 'take this line out',
      run: act((table) => withoutRow(draft, table, at.row)),
      whileTyping: true,
    },
    { keys: 'Alt+ArrowUp', does: 'move the line up', run: move(-1), whileTyping: true },
    { keys: 'Alt+ArrowDown', does: 'move the line down', run: move(1), whileTyping: true },
    ...(rows.length === 0
      ? [{ keys: 'Alt+E', does: 'copy the line of the example', run: copyExample, whileTyping: true }]
      : []),
  ])
  if (form === undefined) return null
  return (
    <div className="sheet-tables">
      <TableNames
        {...{ forms, draft, messages }}
        chosen={form.name}
        onChoose={(table) => go({ table, row: 0, column: 0 })}
      />
      <div className="sheet-table">
        <p className="sheet-table-says">
          <span className="strong">{form.name}</span> {form.says}
        </p>
        <TableGrid
          key={`${form.name} ${pressed}`}
          form={form}
          rows={rows}
          messages={own}
          at={at}
          onGo={(place) => go({ ...place, table: form.name })}
          onWrite={(written) => editSheet(withCells(draft, form, at, [[written]]), about)}
          onPaste={(block) => editSheet(withCells(draft, form, at, block), null)}
        />
        <div className="cell-line" aria-live="polite">
          <p>
            <span className="strong">{column?.heading}</span> {column?.says}
          </p>
          {here.map(({ what, cure }) => (
            <p key={what} className="strong">{`! ${what} ${cure}`}</p>
          ))}
          {suggestions.length === 0 ? null : (
            <ul className="cell-offers" aria-label="What could stand here">
              {suggestions.map((each, position) => (
                <li key={each}>
                  <button type="button" tabIndex={-1} className="cell-offer figures" onClick={() => take(each)}>
                    {each}
                  </button>
                  {position === 0 ? <span className="quiet"> Ctrl Space</span> : null}
                </li>
              ))}
            </ul>
          )}
        </div>
        {rows.length === 0 ? <Example form={form} onCopy={copyExample} /> : null}
      </div>
    </div>
  )
}
