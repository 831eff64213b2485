import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { Problem } from '../../../shared-types/problem.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { problemOf } from '../../store/ask.ts'
import { type OpenDocument, openDocument } from './pdf-document.ts'

interface PdfPagesProps {
  /** Where the document is served; null before one was made. */
  readonly address: string | null
  readonly head: string
  /** The record has changed since the document was made. */
  readonly stale: boolean
  readonly busy: boolean
  readonly onMake: () => void
  readonly children?: ReactNode
}

function useDocument(address: string | null): { document: OpenDocument | null; problem: Problem | null } {
  const [document, setDocument] = useState<OpenDocument | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  useEffect(() => {
    if (address === null) return
    let wanted = true
    let opened: OpenDocument | null = null
    setDocument(null)
    setProblem(null)
    openDocument(address).then(
      (ready) => {
        opened = ready
        if (wanted) setDocument(ready)
        else ready.close()
      },
      (thrown: unknown) => wanted && setProblem(problemOf(thrown)),
    )
    return () => {
      wanted = false
      opened?.close()
    }
  }, [address])
  return { document, problem }
}

/** One page, drawn when it comes near the window. */
function PdfPage({ document, number }: { readonly document: OpenDocument; readonly number: number }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [near, setNear] = useState(false)
  useEffect(() => {
    const shown = canvas.current
    if (shown === null) return
    const watch = new IntersectionObserver((entries) => setNear(entries.some((entry) => entry.isIntersecting)), {
      rootMargin: '600px',
    })
    watch.observe(shown)
    return () => watch.disconnect()
  }, [])
  useEffect(() => {
    const shown = canvas.current
    return near && shown !== null ? document.draw(number, shown, shown.clientWidth) : undefined
  }, [near, document, number])
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={`Page ${number} of ${document.pages}`}
      className="pdf-page"
      style={{ aspectRatio: `1 / ${document.tallness}` }}
    />
  )
}

/** Brings the next page, or the one before, to the head of the window. */
function usePageKeys(pages: React.RefObject<HTMLDivElement | null>): void {
  const turn = (by: 1 | -1) => {
    const all = [...(pages.current?.children ?? [])]
    const top = pages.current?.parentElement?.closest('main')?.getBoundingClientRect().top ?? 0
    const offset = (page: Element) => page.getBoundingClientRect().top - top
    // A page counts as passed once its upper edge is above the window by more than a few pixels.
    const next = by === 1 ? all.find((page) => offset(page) > 8) : all.findLast((page) => offset(page) < -8)
    next?.scrollIntoView({ block: 'start' })
  }
  useKeys('Pages of the report', [
    { keys: ']', does: 'next page', run: () => turn(1) },
    { keys: '[', does: 'page before', run: () => turn(-1) },
  ])
}

/** A report, page under page, with the way to make it anew. */
export function PdfPages({ address, head, stale, busy, onMake, children }: PdfPagesProps) {
  const { document, problem } = useDocument(address)
  const pages = useRef<HTMLDivElement>(null)
  usePageKeys(pages)
  const says = busy
    ? 'composing every page'
    : stale
      ? 'the record has changed since; make it anew'
      : document === null
        ? ''
        : `${document.pages} pages; ] and [ turn them`
  return (
    <Section
      head={head}
      level="column"
      beside={<span role="status">{says}</span>}
      action={
        <span className="pdf-acts">
          {address === null ? null : (
            <a className="place-link" href={address} target="_blank" rel="noreferrer">
              open by itself
            </a>
          )}{' '}
          <ActionKey keys="P" label="preview" name="Make the preview" onAct={onMake} />
        </span>
      }
    >
      {children}
      <ProblemNote problem={problem} />
      {address === null && !busy ? (
        <p className="place-note">P makes the preview: the report as it would be issued now, every page of it.</p>
      ) : null}
      {document === null ? null : (
        <div className="pdf-pages" ref={pages}>
          {Array.from({ length: document.pages }, (_, place) => place + 1).map((number) => (
            <PdfPage key={number} document={document} number={number} />
          ))}
        </div>
      )}
    </Section>
  )
}
