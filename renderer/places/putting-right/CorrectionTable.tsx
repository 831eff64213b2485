import type { Correction } from '../../../shared-types/correction.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { boundsForm } from '../../parts-of-page/number-forms.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { dayText } from '../identity/day-text.ts'
import { whenNone } from './when-none.ts'

interface CorrectionTableProps {
  readonly record: RecordView
  readonly chosen: number | null
  readonly onOpen: (number: number) => void
  readonly onAdd: () => void
}

function CostCell({ correction, currency }: { readonly correction: Correction; readonly currency: string }) {
  const { cost } = correction
  if (cost === null) return <span className="quiet">not priced</span>
  return (
    <>
      <span className="quantity">{boundsForm(cost.low, cost.high, currency)}</span>
      <span className="under-line">
        {cost.low === cost.high ? '' : `likely ${figureText(cost.likely)}\u202f${currency}; `}
        {cost.basis === '' ? 'basis not stated' : cost.basis}, {dayText(cost.pricedOn)}
      </span>
    </>
  )
}

function StateCell({ correction }: { readonly correction: Correction }) {
  const said =
    correction.state === 'verified'
      ? `by ${correction.verifiedBy === '' ? 'nobody named' : correction.verifiedBy}, ${dayText(correction.verifiedOn)}`
      : correction.state === 'done'
        ? `${dayText(correction.doneOn)}; not verified`
        : 'not done'
  return (
    <>
      <span className="strong">{correction.state}</span>
      <span className="under-line">{said}</span>
    </>
  )
}

const References = ({ kind, keys }: { readonly kind: 'finding' | 'exhibit'; readonly keys: readonly number[] }) => (
  <span className="reference-row">
    {keys.length === 0 ? <span className="quiet">none</span> : null}
    {keys.map((number) => (
      <ReferenceLink key={number} reference={{ kind, key: String(number) }} />
    ))}
  </span>
)

/** The ledger: what is put right, which findings it answers, how far it has come, and what it costs. */
export function CorrectionTable({ record, chosen, onOpen, onAdd }: CorrectionTableProps) {
  return (
    <Section
      head="Corrections"
      level="column"
      beside="cost as bounds, least – most"
      action={<ActionKey keys="K" label="add" name="Add a correction" onAct={onAdd} disabled={record.readOnly} />}
    >
      <RegisterTable
        label="Corrections"
        rows={record.corrections}
        keyOf={(correction) => String(correction.number)}
        onOpen={(correction) => onOpen(correction.number)}
        chosen={chosen === null ? null : String(chosen)}
        whenEmpty={whenNone(record.findings.length)}
        columns={[
          {
            id: 'number',
            head: 'no.',
            cell: (correction) => <span className="figures">{`K\u202f${correction.number}`}</span>,
          },
          {
            id: 'what',
            head: 'what',
            names: true,
            cell: (correction) => (
              <>
                {correction.what}
                <span className="under-line">
                  {correction.group}
                  {correction.by === '' ? '' : ` · by ${correction.by}`}
                </span>
              </>
            ),
          },
          {
            id: 'findings',
            head: 'findings',
            cell: (correction) => <References kind="finding" keys={correction.findings} />,
          },
          { id: 'state', head: 'state', cell: (correction) => <StateCell correction={correction} /> },
          {
            id: 'cost',
            head: 'cost',
            figures: true,
            cell: (correction) => <CostCell correction={correction} currency={record.commission.currency} />,
          },
          {
            id: 'before',
            head: 'before',
            cell: (correction) => <References kind="exhibit" keys={correction.exhibitsBefore} />,
          },
          {
            id: 'after',
            head: 'after',
            cell: (correction) => <References kind="exhibit" keys={correction.exhibitsAfter} />,
          },
        ]}
      />
    </Section>
  )
}
