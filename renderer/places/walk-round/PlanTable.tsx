import type { PlanTableRow } from '../../../shared-types/figure.ts'
import { type RegisterColumn, RegisterTable } from '../../parts-of-page/RegisterTable.tsx'

const columns: readonly RegisterColumn<PlanTableRow>[] = [
  { id: 'stop', head: 'stop', cell: (row) => row.stop, figures: true },
  { id: 'name', head: 'panel', cell: (row) => row.name, names: true },
  { id: 'layer', head: 'layer', cell: (row) => row.layer },
  { id: 'inspection', head: 'looked at', cell: (row) => row.inspection },
  { id: 'metal', head: 'metal', cell: (row) => row.metal },
  { id: 'paint', head: 'paint', cell: (row) => row.paint },
  { id: 'findings', head: 'findings', cell: (row) => row.findings.join(', ') },
  { id: 'exhibits', head: 'exhibits', cell: (row) => row.exhibits.join(', ') },
]

interface PlanTableProps {
  readonly rows: readonly PlanTableRow[]
  readonly inHand: string | null
  readonly onChoose: (panelId: string) => void
}

/** The same facts as the drawing, as a table in walking order. */
export function PlanTable({ rows, inHand, onChoose }: PlanTableProps) {
  return (
    <div className="plan-table">
      <RegisterTable
        label="Panels in walking order"
        columns={columns}
        rows={rows}
        keyOf={(row) => row.panelId}
        chosen={inHand}
        onOpen={(row) => onChoose(row.panelId)}
        whenEmpty="The plan has not been drawn yet."
      />
    </div>
  )
}
