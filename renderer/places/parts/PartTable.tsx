import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { type RegisterColumn, RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { groupWords, type PartRow } from './part-rows.ts'

interface PartTableProps {
  readonly rows: readonly PartRow[]
  readonly inHand: string | null
  readonly onOpen: (partId: string) => void
}

const columns: readonly RegisterColumn<PartRow>[] = [
  {
    id: 'part',
    head: 'part',
    names: true,
    cell: (row) => (
      <>
        {row.name}
        <span className="under-line">{groupWords(row.definition.group)}</span>
      </>
    ),
  },
  {
    id: 'state',
    head: 'state',
    cell: (row) => (
      <>
        <span className={row.entry === null ? 'quiet' : 'strong'}>{row.state}</span>
        {row.suggested === null ? null : <span className="under-line">facts suggest: {row.suggested}</span>}
      </>
    ),
  },
  { id: 'expected', head: 'expected', cell: (row) => <span className="note">{row.expected}</span> },
  {
    id: 'number',
    head: 'number as read',
    cell: (row) => <span className="figures part-number">{row.entry?.numberAsRead ?? ''}</span>,
  },
  {
    id: 'date',
    head: 'date as read',
    cell: (row) => <span className="figures">{row.entry?.dateAsRead ?? ''}</span>,
  },
  {
    id: 'exhibits',
    head: 'exhibits',
    cell: (row) => (
      <span className="reference-row">
        {(row.entry?.exhibits ?? []).map((number) => (
          <ReferenceLink key={number} reference={{ kind: 'exhibit', key: String(number) }} />
        ))}
      </span>
    ),
  },
  {
    id: 'travels',
    head: 'travels with',
    cell: ({ definition, entry }) => {
      const own = entry?.countsWith ?? null
      const set = own === null ? definition.travelsWith : own.set
      return (
        <>
          <span className="note">{groupWords(set ?? 'nothing')}</span>
          {own === null ? null : <span className="under-line">{own.reason}</span>}
        </>
      )
    },
  },
]

/** The parts list with what was found of each. */
export function PartTable({ rows, inHand, onOpen }: PartTableProps) {
  return (
    <RegisterTable
      label="Parts of this car"
      rows={rows}
      keyOf={(row) => row.definition.id}
      onOpen={(row) => onOpen(row.definition.id)}
      chosen={inHand}
      whenEmpty="No part answers to this. A shows every part."
      columns={columns}
    />
  )
}
