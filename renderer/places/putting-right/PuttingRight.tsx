import { useEffect, useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { BeforeAndAfter } from './BeforeAndAfter.tsx'
import { CoatingChanged } from './CoatingChanged.tsx'
import { CorrectionForm } from './CorrectionForm.tsx'
import { CorrectionTable } from './CorrectionTable.tsx'
import { CostTotals } from './CostTotals.tsx'
import '../place-lines.css'
import './putting-right.css'

function PuttingRightPage({ record }: { readonly record: RecordView }) {
  /** Number of the open row; 'new' for one that is being added. */
  const [opened, setOpened] = useState<number | 'new' | null>(null)
  const pointed = useScreenStore((state) => state.pointed)
  useEffect(() => {
    if (pointed?.kind !== 'correction') return
    setOpened(Number(pointed.key))
    useScreenStore.setState({ pointed: null })
  }, [pointed])
  const add = () => {
    if (!record.readOnly) setOpened('new')
  }
  useKeys('Putting right', [{ keys: 'K', does: 'add a correction', run: add }])
  const row = record.corrections.find((correction) => correction.number === opened) ?? null
  const leave = () => setOpened(null)
  return (
    <PlacePage
      name="Putting right"
      sheetName="Entry"
      {...(opened === null || record.readOnly
        ? {}
        : { sheet: <CorrectionForm key={`k${opened}`} row={row} onLeave={leave} /> })}
    >
      <div className="ledger">
        <div>
          <CorrectionTable record={record} chosen={row?.number ?? null} onOpen={setOpened} onAdd={add} />
          {row === null ? null : (
            <>
              <BeforeAndAfter correction={row} record={record} />
              <CoatingChanged correction={row} record={record} />
            </>
          )}
        </div>
        <CostTotals record={record} />
        <CautionLines steps={['sanding or cutting', 'spraying or flatting two-pack paint', 'handling torn steel']} />
      </div>
    </PlacePage>
  )
}

/** Putting right: the ledger of corrections, from planned to verified, each with what it was before and after. */
export function PuttingRight() {
  return <RecordPlace name="Putting right">{(record) => <PuttingRightPage record={record} />}</RecordPlace>
}
