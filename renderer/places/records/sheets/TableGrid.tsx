import { type ClipboardEvent, type KeyboardEvent, type RefObject, useLayoutEffect, useRef, useState } from 'react'
import type { SheetMessage, TableForm } from '../../../../shared-types/sheet-desk.ts'
import { type CellPlace, cellsOfClipboard } from './table-edits.ts'

/** Rows drawn at once; more are drawn as one scrolls. */
const DRAWN = 80
const LEAST_LETTERS = 7
/** What the space beside the content of a cell comes to. */
const PADDING_LETTERS = 4
const MOST_LETTERS = 30

interface TableGridProps {
  readonly form: TableForm
  readonly rows: readonly (readonly string[])[]
  readonly messages: readonly SheetMessage[]
  readonly at: CellPlace
  readonly onGo: (place: CellPlace) => void
  /** The cell in hand as written so far. */
  readonly onWrite: (text: string) => void
  readonly onPaste: (block: readonly (readonly string[])[]) => void
}

/** Keys that end a row written with Tab. */
const movesOn: ReadonlySet<string> = new Set(['Enter', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'])

const within = (value: number, most: number): number => Math.max(0, Math.min(value, most))

/** Letters a column is wide: as its longest content, within bounds, so that it does not change as one scrolls. */
function lettersOf(form: TableForm, rows: readonly (readonly string[])[], column: number): number {
  const heading = form.columns[column]?.heading.length ?? 0
  const longest = rows.reduce((most, row) => Math.max(most, row[column]?.length ?? 0), heading)
  const wanted = longest + PADDING_LETTERS
  return Math.max(LEAST_LETTERS, within(wanted, MOST_LETTERS))
}

function messageOf(messages: readonly SheetMessage[], row: number, heading: string | null): SheetMessage | undefined {
  const here = messages.filter((message) => message.row === row && (heading === null || message.column === heading))
  return here.find(({ severity }) => severity === 'error') ?? here[0]
}

const mark = (message: SheetMessage | undefined): string =>
  message === undefined ? '' : message.severity === 'error' ? '!' : '?'

/** The cell in hand: its whole content, chosen, so that the first letter replaces it and arrows go on. */
function CellInHand(props: {
  readonly label: string
  readonly text: string
  readonly place: CellPlace
  readonly isLast: boolean
  /** Column in which a row that is written with Tab began; Enter goes back to it, one row on. Null for no such row. */
  readonly tabbedFrom: RefObject<number | null>
  readonly onWrite: (text: string) => void
  readonly onPaste: (event: ClipboardEvent<HTMLTextAreaElement>) => void
  readonly onGo: (place: CellPlace) => void
}) {
  const { place, text, onGo, tabbedFrom } = props
  const field = useRef<HTMLTextAreaElement>(null)
  const before = useRef(text)
  const [writing, setWriting] = useState(false)
  useLayoutEffect(() => {
    field.current?.focus({ preventScroll: true })
    field.current?.select()
    field.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
  }, [])
  const go = (event: KeyboardEvent, row: number, column: number) => {
    event.preventDefault()
    event.stopPropagation()
    onGo({ row, column })
  }
  const { row, column } = place
  const onKeyDown = (event: KeyboardEvent<HTMLTextAreaElement>) => {
    if (event.ctrlKey || event.altKey || event.metaKey || event.nativeEvent.isComposing) return
    const began = tabbedFrom.current ?? column
    if (movesOn.has(event.key)) tabbedFrom.current = null
    if (event.key === 'Enter' && !event.shiftKey) go(event, row + 1, began)
    else if (event.key === 'Tab') {
      // At either end of the table Tab leaves it, as it leaves every other control.
      if (event.shiftKey ? row === 0 && column === 0 : props.isLast) return
      if (!event.shiftKey) tabbedFrom.current = began
      go(event, row, column + (event.shiftKey ? -1 : 1))
    } else if (event.key === 'F2') {
      setWriting(true)
      field.current?.setSelectionRange(text.length, text.length)
    } else if (event.key === 'Escape' && writing) {
      event.preventDefault()
      event.stopPropagation()
      setWriting(false)
      props.onWrite(before.current)
    } else if (writing) return
    else if (event.key === 'ArrowDown') go(event, row + 1, column)
    else if (event.key === 'ArrowUp') go(event, row - 1, column)
    else if (event.key === 'ArrowRight') go(event, row, column + 1)
    else if (event.key === 'ArrowLeft') go(event, row, column - 1)
    else if (event.key === 'Home') go(event, row, 0)
    else if (event.key === 'End') go(event, row, Number.POSITIVE_INFINITY)
    else if (event.key === 'PageDown') go(event, row + 15, column)
    else if (event.key === 'PageUp') go(event, row - 15, column)
    else if (event.key === 'Delete' || event.key === 'Backspace') {
      event.preventDefault()
      props.onWrite('')
    }
  }
  return (
    <textarea
      ref={field}
      className="grid-field"
      aria-label={props.label}
      rows={1}
      spellCheck={false}
      value={text}
      onChange={(event) => {
        setWriting(true)
        props.onWrite(event.target.value)
      }}
      onPaste={props.onPaste}
      onMouseUp={() => setWriting(true)}
      onKeyDown={onKeyDown}
    />
  )
}

const ROW_REM = 2.1
/** Stands for rows that are not drawn, as high as they are. */
const Gap = ({ rows, columns }: { readonly rows: number; readonly columns: number }) => (
  <tr>
    <td colSpan={columns + 1} style={{ height: `${ROW_REM * rows}rem` }} />
  </tr>
)

/** One table of a sheet as a grid: arrows, Tab and Enter move, Enter after Tab begins the next row, typing replaces, F2 writes on. */
export function TableGrid({ form, rows, messages, at, onGo, onWrite, onPaste }: TableGridProps) {
  const { columns, name } = form
  const [from, setFrom] = useState(0)
  const tabbedFrom = useRef<number | null>(null)
  const all = rows.length + 1
  const first = within(at.row >= from && at.row < from + DRAWN ? from : at.row - DRAWN / 2, Math.max(0, all - DRAWN))
  const shown = Array.from({ length: Math.min(DRAWN, all) }, (_, position) => first + position)
  const go = ({ row, column }: CellPlace) => {
    const last = columns.length - 1
    if (Number.isFinite(column) && column > last) onGo({ row: within(row + 1, rows.length), column: 0 })
    else if (column < 0) onGo({ row: within(row - 1, rows.length), column: last })
    else onGo({ row: within(row, rows.length), column: within(column, last) })
  }
  const paste = (event: ClipboardEvent<HTMLTextAreaElement>) => {
    const text = event.clipboardData.getData('text/plain')
    if (!/[\t\n\r]/.test(text.trimEnd())) return
    event.preventDefault()
    onPaste(cellsOfClipboard(text.replace(/(\r\n|\n|\r)$/, '')))
  }
  const letters = columns.map((_, column) => lettersOf(form, rows, column))
  return (
    <div
      className="grid-frame"
      onScroll={(event) => {
        const { scrollTop, scrollHeight } = event.currentTarget
        const row = Math.floor((scrollTop / Math.max(1, scrollHeight)) * all)
        if (Math.abs(row - DRAWN / 4 - from) > DRAWN / 4)
          setFrom(within(Math.floor(row - DRAWN / 4), Math.max(0, all - DRAWN)))
      }}
    >
      <table className="grid" aria-label={name} aria-rowcount={all + 1} aria-colcount={columns.length}>
        <colgroup>
          <col style={{ width: '4ch' }} />
          {columns.map(({ heading }, column) => (
            <col key={heading} style={{ width: `${letters[column]}ch` }} />
          ))}
        </colgroup>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">line</span>
            </th>
            {columns.map(({ heading }) => (
              <th key={heading} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {first > 0 ? <Gap rows={first} columns={columns.length} /> : null}
          {shown.map((row) => (
            <tr key={row} aria-rowindex={row + 2}>
              <th scope="row" className="figures">
                {mark(messageOf(messages, row, null))}
                {row < rows.length ? row + 1 : '+'}
              </th>
              {columns.map(({ heading }, column) => {
                const text = rows[row]?.[column] ?? ''
                const inHand = row === at.row && column === at.column
                const wrong = messageOf(messages, row, heading)
                const label = `${heading}, row ${row + 1}${wrong === undefined ? '' : `: ${wrong.what}`}`
                return (
                  <td
                    key={heading}
                    data-in-hand={inHand || undefined}
                    className={wrong === undefined ? undefined : 'is-wrong'}
                    data-mark={mark(wrong) || undefined}
                    onMouseDown={(event) => {
                      if (inHand) return
                      event.preventDefault()
                      tabbedFrom.current = null
                      onGo({ row, column })
                    }}
                  >
                    {inHand ? (
                      <CellInHand
                        key={`${name} ${row} ${heading}`}
                        isLast={row === rows.length && column === columns.length - 1}
                        {...{ label, text, onWrite, place: at, onPaste: paste, onGo: go, tabbedFrom }}
                      />
                    ) : (
                      text
                    )}
                  </td>
                )
              })}
            </tr>
          ))}
          {first + shown.length < all ? <Gap rows={all - first - shown.length} columns={columns.length} /> : null}
        </tbody>
      </table>
    </div>
  )
}
