import { useState } from 'react'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { FasteningForm } from './FasteningForm.tsx'
import { Interchange } from './Interchange.tsx'

type Open = 'interchange' | 'fastenings' | null

/** What is looked up beside the register: interchange, and fastenings by sample; each by its key, one at a time. */
export function PartSearches({ partId, follows }: { readonly partId: string | null; readonly follows: number }) {
  const [open, setOpen] = useState<Open>(null)
  const toggle = (which: Exclude<Open, null>) => setOpen((before) => (before === which ? null : which))
  useKeys('Looking up', [
    { keys: 'I', does: 'interchange: what else carried a part', run: () => toggle('interchange') },
    { keys: 'B', does: 'fastenings by sample', run: () => toggle('fastenings') },
  ])
  return (
    <div className="part-searches">
      <p className="part-searches-acts">
        <ActionKey keys="I" label="interchange" name="Interchange" onAct={() => toggle('interchange')} />
        <ActionKey keys="B" label="fastenings" name="Fastenings by sample" onAct={() => toggle('fastenings')} />
      </p>
      {open === 'interchange' ? <Interchange partId={partId} follows={follows} onLeave={() => setOpen(null)} /> : null}
      {open === 'fastenings' ? <FasteningForm kept={null} onLeave={() => setOpen(null)} /> : null}
    </div>
  )
}
