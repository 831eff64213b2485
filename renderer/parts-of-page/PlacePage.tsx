import type { ReactNode } from 'react'
import { useRecordStore } from '../store/record-store.ts'
import { HeadLine } from './HeadLine.tsx'
import { ProblemNote } from './ProblemNote.tsx'

interface PlacePageProps {
  /** Name of the place, read out as the page's heading. */
  readonly name: string
  /** What stands in the right-hand sheet; left out, the working area takes the whole width. */
  readonly sheet?: ReactNode
  /** More of the same, below it; beside it on a large screen, where it stays while an entry is open. */
  readonly secondSheet?: ReactNode
  /** What the sheet is about, for those who do not see it. */
  readonly sheetName?: string
  readonly children: ReactNode
}

function placeClass(hasSheet: boolean, hasSecond: boolean): string {
  if (!hasSheet) return 'place'
  return hasSecond ? 'place with-sheet with-second-sheet' : 'place with-sheet'
}

/** A place: head line, working area, and the sheet at the right. */
export function PlacePage({ name, sheet, secondSheet, sheetName, children }: PlacePageProps) {
  const problem = useRecordStore((state) => state.problem)
  return (
    <div className={placeClass(sheet !== undefined, secondSheet !== undefined)}>
      <HeadLine />
      <main className="working-area" id="working-area" tabIndex={-1}>
        <h1 className="unseen">{name}</h1>
        <ProblemNote problem={problem} />
        {children}
      </main>
      {sheet === undefined ? null : (
        <aside className="sheet" aria-label={sheetName ?? 'Sheet'}>
          {secondSheet === undefined ? (
            sheet
          ) : (
            <>
              <div className="sheet-first">{sheet}</div>
              <div className="sheet-second">{secondSheet}</div>
            </>
          )}
        </aside>
      )}
    </div>
  )
}
