import { type ReactNode, useEffect, useRef, useState } from 'react'
import type { Paper } from '../../../shared-types/edition.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { problemOf } from '../../store/ask.ts'
import { PdfPage } from './PdfPage.tsx'
import { type OpenDocument, openDocument } from './pdf-document.ts'

interface PdfPagesProps {
  /** Where the document is served; null before one was made. */
  readonly address: string | null
  readonly head: string
  readonly paper: Paper
  /** It is the preview, which P makes anew, and no edition. */
  readonly isPreview: boolean
  /** The record has changed since the document was made. */
  readonly stale: boolean
  /** A preview is being made. */
  readonly busy: boolean
  /** One that is not there yet comes by itself. */
  readonly comes: boolean
  readonly onMake: () => void
  readonly children?: ReactNode
}

/** The document at an address. The one before stays until the next is open, so that its pages do not go in between. */
function useDocument(address: string | null): { document: OpenDocument | null; problem: Problem | null } {
  const [document, setDocument] = useState<OpenDocument | null>(null)
  const [problem, setProblem] = useState<Problem | null>(null)
  useEffect(() => {
    if (address === null) return
    let wanted = true
    setProblem(null)
    openDocument(address).then(
      (ready) => {
        if (wanted) setDocument(ready)
        else ready.close()
      },
      (thrown: unknown) => wanted && setProblem(problemOf(thrown)),
    )
    return () => {
      wanted = false
    }
  }, [address])
  useEffect(() => () => document?.close(), [document])
  return { document, problem }
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

/** The first page to be, while there is none: what will stand there, and by what. */
function PageToCome({ paper, comes }: Pick<PdfPagesProps, 'paper' | 'comes'>) {
  return (
    <div className={`pdf-page page-to-come is-${paper.toLowerCase()}`}>
      <p className="place-note">
        {comes
          ? 'The report as it would be issued now, every page of it, comes here.'
          : 'P makes the preview: the report as it would be issued now, every page of it.'}
      </p>
    </div>
  )
}

/** A report, page under page, with the way to make it anew. */
export function PdfPages(props: PdfPagesProps) {
  const { address, head, paper, isPreview, stale, busy, comes, onMake, children } = props
  const { document, problem } = useDocument(address)
  const pages = useRef<HTMLDivElement>(null)
  usePageKeys(pages)
  const says = busy
    ? 'composing every page'
    : stale
      ? 'the record has changed since; P makes it anew'
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
          {isPreview ? (
            <ActionKey keys="P" label="make anew" name="Make the preview anew" onAct={onMake} />
          ) : (
            <ActionKey keys="P" label="preview" name="Show the preview" onAct={onMake} />
          )}
        </span>
      }
    >
      {children}
      <ProblemNote problem={problem} />
      <div className="pdf-pages" ref={pages}>
        {document === null ? (
          <PageToCome paper={paper} comes={comes || busy || address !== null} />
        ) : (
          Array.from({ length: document.pages }, (_, place) => place + 1).map((number) => (
            <PdfPage key={number} document={document} number={number} />
          ))
        )}
      </div>
    </Section>
  )
}
