import type { SheetMessage, TableForm, TablesDraft } from '../../../../shared-types/sheet-desk.ts'
import { rowsIn } from './table-edits.ts'

/** The tables of a sheet with how many rows each has, and which have something to mend. */
export function TableNames(props: {
  readonly forms: readonly TableForm[]
  readonly draft: TablesDraft
  readonly messages: readonly SheetMessage[]
  readonly chosen: string
  readonly onChoose: (table: string) => void
}) {
  return (
    <ul className="table-names" aria-label="Tables of the sheet">
      {props.forms.map(({ name }) => {
        const own = props.messages.filter(({ table }) => table === name)
        const errors = own.filter(({ severity }) => severity === 'error').length
        const rows = rowsIn(props.draft, name).length
        return (
          <li key={name}>
            <button
              type="button"
              className="table-name"
              aria-current={name === props.chosen ? 'true' : undefined}
              onClick={() => props.onChoose(name)}
            >
              <span>{name}</span>
              <span className="figures">
                {errors > 0 ? <span className="strong">{`!${errors} `}</span> : own.length > 0 ? `?${own.length} ` : ''}
                {rows === 0 ? '' : rows}
              </span>
            </button>
          </li>
        )
      })}
    </ul>
  )
}
