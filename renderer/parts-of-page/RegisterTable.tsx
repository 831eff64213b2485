import { memo, type ReactNode, type SyntheticEvent, useLayoutEffect, useRef, useState } from 'react'
import { keyInRegister, rowOf } from './register-keys.ts'

export interface RegisterColumn<Item> {
  readonly id: string
  readonly head: string
  readonly cell: (item: Item) => ReactNode
  /** Figures stand to the right, in the figure face. */
  readonly figures?: boolean
  /** The column that names the row to those who do not see the table. Exactly one. */
  readonly names?: boolean
}

interface RegisterTableProps<Item> {
  readonly label: string
  /** Rows are drawn anew when this list is another one: keep it outside the component, or memoised. */
  readonly columns: readonly RegisterColumn<Item>[]
  /** A row that is the same object as before is not drawn anew. */
  readonly rows: readonly Item[]
  readonly keyOf: (item: Item) => string
  /** Enter or a press opens the row. */
  readonly onOpen: (item: Item) => void
  /** Key of the row that is open. */
  readonly chosen?: string | null
  readonly whenEmpty: ReactNode
}

interface RegisterRowProps<Item> {
  readonly item: Item
  readonly rowKey: string
  readonly columns: readonly RegisterColumn<Item>[]
  readonly open: boolean
  /** Tab comes to this row; to the others arrows lead. */
  readonly stop: boolean
}

const classOf = (part: 'head' | 'cell', figures: boolean | undefined): string =>
  figures === true ? `register-${part} is-figures` : `register-${part}`

function PlainRow<Item>({ item, rowKey, columns, open, stop }: RegisterRowProps<Item>) {
  const row = useRef<HTMLTableRowElement>(null)
  // Controls within a row are reached from it by arrows; Tab goes on behind the table, not through hundreds of links.
  useLayoutEffect(() => {
    for (const control of row.current?.querySelectorAll<HTMLElement>('button, a') ?? []) control.tabIndex = -1
  })
  return (
    <tr
      ref={row}
      data-key={rowKey}
      tabIndex={stop ? 0 : -1}
      className={open ? 'register-row is-open' : 'register-row'}
      {...(open ? { 'aria-current': true } : {})}
    >
      {columns.map((column) => {
        const cell = { className: classOf('cell', column.figures), children: column.cell(item) }
        return column.names === true ? <th key={column.id} scope="row" {...cell} /> : <td key={column.id} {...cell} />
      })}
    </tr>
  )
}

const RegisterRow = memo(PlainRow) as typeof PlainRow

/**
 * A register as a table: arrows move, Enter opens. Moving alone opens nothing. Rows by the grid pattern of the ARIA
 * Authoring Practices Guide, with the focus on rows. It draws anew only rows that changed, since some have two hundred.
 */
export function RegisterTable<Item>({
  label,
  columns,
  rows,
  keyOf,
  onOpen,
  chosen,
  whenEmpty,
}: RegisterTableProps<Item>) {
  const [visited, setVisited] = useState<string | null>(null)
  const keys = rows.map(keyOf)
  const stop = [visited, chosen].find((key) => key != null && keys.includes(key)) ?? keys[0]
  const open = (key: string | null) => {
    const item = rows[keys.indexOf(key ?? '')]
    if (item !== undefined) onOpen(item)
  }
  const press = (event: SyntheticEvent) => {
    if ((event.target as Element).closest('button, a') === null) open(rowOf(event.target)?.dataset.key ?? null)
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a grid is a table whose rows take keys.
    <table role="grid" aria-label={label} className="register">
      <thead>
        <tr>
          {columns.map((column) => (
            <th key={column.id} scope="col" className={classOf('head', column.figures)}>
              {column.head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody
        onClick={press}
        onFocus={(event) => setVisited(rowOf(event.target)?.dataset.key ?? null)}
        onKeyDown={(event) => keyInRegister(event, open)}
      >
        {rows.map((item, place) => {
          const key = keys[place] ?? ''
          const marks = { open: key === chosen, stop: key === stop }
          return <RegisterRow key={key} rowKey={key} item={item} columns={columns} {...marks} />
        })}
        {rows.length > 0 ? null : (
          <tr>
            <td colSpan={columns.length} className="register-empty">
              {whenEmpty}
            </td>
          </tr>
        )}
      </tbody>
    </table>
  )
}
