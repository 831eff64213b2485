import type { ReactNode } from 'react'
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

/** A register as a table: arrows move, typing finds, Enter opens. Moving alone opens nothing. */
export function RegisterTable<Item>(props: RegisterTableProps<Item>) {
  const open = (key: string) => {
    const item = props.rows.find((row) => props.keyOf(row) === key)
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
        {props.columns.map((column) => (
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
      <TableBody renderEmptyState={() => <div className="register-empty">{props.whenEmpty}</div>}>
        {props.rows.map((item) => (
          <Row
            key={props.keyOf(item)}
            id={props.keyOf(item)}
            textValue={props.textOf(item)}
            className={[
              'register-row',
              props.onOpen === undefined ? '' : 'opens',
              props.keyOf(item) === props.chosen ? 'is-open' : '',
            ].join(' ')}
          >
            {props.columns.map((column) => (
              <Cell key={column.id} className={column.figures === true ? 'register-cell is-figures' : 'register-cell'}>
                {column.cell(item)}
              </Cell>
            ))}
          </Row>
        ))}
      </TableBody>
    </Table>
  )
}
