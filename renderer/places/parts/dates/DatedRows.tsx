import { useId, useRef, useState } from 'react'
import type { DatedRow } from '../../../../shared-types/time-line-view.ts'
import { Section } from '../../../parts-of-page/Section.tsx'
import { Chain } from '../../judgement/Chain.tsx'

/** Every dated thing as a line; a line opens what it rests on. Arrows move from line to line. */
export function DatedRows({ rows }: { readonly rows: readonly DatedRow[] }) {
  const lines = useRef<HTMLDivElement>(null)
  const step = (event: React.KeyboardEvent) => {
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0
    if (by === 0) return
    const all = [...(lines.current?.querySelectorAll<HTMLButtonElement>('.dated-line') ?? [])]
    const at = all.indexOf(document.activeElement as HTMLButtonElement)
    if (at < 0) return
    event.preventDefault()
    all[Math.min(all.length - 1, Math.max(0, at + by))]?.focus()
  }
  return (
    <Section head="Every date" beside="said of it alone · left by everything">
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the arrows only move between the buttons inside. */}
      <div ref={lines} onKeyDown={step}>
        {rows.map((row) => (
          <DatedLine key={row.id} row={row} />
        ))}
      </div>
    </Section>
  )
}

const aloneWords = ({ given, dropped }: DatedRow): string => {
  const out = new Set(dropped.map(({ words }) => words))
  return [...new Set(given.map(({ words }) => words))]
    .map((words) => (out.has(words) ? `${words} (no room left)` : words))
    .join('; or ')
}

function DatedLine({ row }: { readonly row: DatedRow }) {
  const [open, setOpen] = useState(false)
  const chain = useId()
  const stands = row.standing === 'not compared' || row.standing === 'holds with the rest' ? '' : row.standing
  return (
    <>
      <button
        type="button"
        className="dated-line"
        aria-expanded={open}
        aria-controls={open ? chain : undefined}
        onClick={() => setOpen(!open)}
      >
        <span>
          {row.label}
          {row.state === '' ? null : <span className="under-line">{row.state}</span>}
        </span>
        <span className="figures">{row.asRead}</span>
        <span>{aloneWords(row)}</span>
        <span className="strong">{row.narrowed.words}</span>
        <span>{stands}</span>
      </button>
      {open ? (
        <div id={chain} className="dated-chain">
          {row.standingWords === '' ? null : <p>{row.standingWords}</p>}
          {row.dropped.map(({ words, because }) => (
            <p key={words} className="note">{`${words} is left no room: ${because}`}</p>
          ))}
          <Chain because={row.because} />
        </div>
      ) : null}
    </>
  )
}
