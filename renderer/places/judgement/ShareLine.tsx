import { useId, useState } from 'react'
import type { ShareRange } from '../../../shared-types/judgement.ts'
import { boundsText } from './bounds-text.ts'
import { Chain } from './Chain.tsx'
import { SeenNo } from './SeenNo.tsx'

interface ShareLineProps {
  readonly range: ShareRange
  readonly label: string
  readonly beside?: string
}

const wordsOf = (range: ShareRange): string =>
  `seen and original ${range.seenYesPercent.toFixed(0)} %, not seen or not settled ${range.notSeenPercent.toFixed(0)} %, seen and not original ${range.seenNoPercent.toFixed(0)} %`

/** One share as bounds on the common axis; the line opens the chain of what it rests on. */
export function ShareLine({ range, label, beside }: ShareLineProps) {
  const [open, setOpen] = useState(false)
  const chain = useId()
  return (
    <div className="share">
      <button
        type="button"
        className="share-row share-line"
        aria-expanded={open}
        aria-controls={open ? chain : undefined}
        onClick={() => setOpen(!open)}
      >
        <span className="share-label">
          {label}
          {beside === undefined ? null : <span className="quiet"> {beside}</span>}
        </span>
        <span className="bar">
          <span className="bar-yes" style={{ width: `${range.seenYesPercent}%` }} />
          <span className="bar-open" style={{ width: `${range.notSeenPercent}%` }} />
          <SeenNo percent={range.seenNoPercent} />
        </span>
        <span className="figures">{boundsText(range)}</span>
        <span className="unseen">{wordsOf(range)}. Why?</span>
      </button>
      {open ? (
        <div id={chain} className="chain">
          <p className="note">{range.basis}</p>
          <Chain because={range.because} />
        </div>
      ) : null}
    </div>
  )
}
