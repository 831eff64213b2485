import { type ReactNode, useEffect, useRef } from 'react'
import { Cell, Column, Row, Table, TableBody, TableHeader } from 'react-aria-components/Table'

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
  readonly rows: readonly Item[]
  readonly keyOf: (item: Item) => string
  /** The plain words of a row, by which typing finds it. */
  readonly textOf: (item: Item) => string
  /** Enter or a press opens the row. */
  readonly onOpen?: (item: Item) => void
  /** Key of the row that is open. */
  readonly chosen?: string | null
  readonly whenEmpty: ReactNode
}

interface ShownRow<Item> {
  readonly item: Item
  readonly open: boolean
}

/** The rows as shown, each the same object as before while nothing about it changed, so that only changed rows are drawn anew. */
function useShownRows<Item>(
  rows: readonly Item[],
  keyOf: (item: Item) => string,
  chosen: string | null,
): readonly ShownRow<Item>[] {
  const before = useRef<ReadonlyMap<string, ShownRow<Item>>>(new Map())
  const shown = rows.map((item) => {
    const open = keyOf(item) === chosen
    const same = before.current.get(keyOf(item))
    return same?.item === item && same.open === open ? same : { item, open }
  })
  useEffect(() => {
    before.current = new Map(shown.map((row) => [keyOf(row.item), row]))
  })
  return shown
}

/** A register as a table: arrows move, typing finds, Enter opens. Moving alone opens nothing. */
export function RegisterTable<Item>(props: RegisterTableProps<Item>) {
  const { columns, keyOf } = props
  const shown = useShownRows(props.rows, keyOf, props.chosen ?? null)
  const open = (key: string) => {
    const item = props.rows.find((row) => keyOf(row) === key)
    if (item !== undefined) props.onOpen?.(item)
  }
  return (
    <Table
      aria-label={props.label}
      className="register"
      selectionMode="none"
      {...(props.onOpen === undefined ? {} : { onRowAction: (key: string | number) => open(String(key)) })}
    >
      <TableHeader>
        {columns.map((column) => (
          <Column
            key={column.id}
            id={column.id}
            isRowHeader={column.names ?? false}
            className={column.figures === true ? 'register-head is-figures' : 'register-head'}
          >
            {column.head}
          </Column>
        ))}
      </TableHeader>
      <TableBody
        items={shown}
        dependencies={[columns]}
        renderEmptyState={() => <div className="register-empty">{props.whenEmpty}</div>}
      >
        {({ item, open }) => (
          <Row
            id={keyOf(item)}
            textValue={props.textOf(item)}
            className={['register-row', props.onOpen === undefined ? '' : 'opens', open ? 'is-open' : ''].join(' ')}
          >
            {columns.map((column) => (
              <Cell key={column.id} className={column.figures === true ? 'register-cell is-figures' : 'register-cell'}>
                {column.cell(item)}
              </Cell>
            ))}
          </Row>
        )}
      </TableBody>
    </Table>
  )
}
