import type { ReactNode } from 'react'
import { useRecordStore } from '../store/record-store.ts'
import { HeadLine } from './HeadLine.tsx'
import { ProblemNote } from './ProblemNote.tsx'

interface PlacePageProps {
  /** Name of the place, read out as the page's heading. */
  readonly name: string
  /** What stands in the right-hand sheet; left out, the working area takes the whole width. */
  readonly sheet?: ReactNode
  /** What the sheet is about, for those who do not see it. */
  readonly sheetName?: string
  readonly children: ReactNode
}

/** A place: head line, working area, and the sheet at the right. */
export function PlacePage({ name, sheet, sheetName, children }: PlacePageProps) {
  const problem = useRecordStore((state) => state.problem)
  return (
    <div className={sheet === undefined ? 'place' : 'place with-sheet'}>
      <HeadLine />
      <main className="working-area" id="working-area" tabIndex={-1}>
        <h1 className="unseen">{name}</h1>
        <ProblemNote problem={problem} />
        {children}
      </main>
      {sheet === undefined ? null : (
        <aside className="sheet" aria-label={sheetName ?? 'Sheet'}>
          {sheet}
        </aside>
      )}
    </div>
  )
}
