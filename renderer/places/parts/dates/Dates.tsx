import { useRef, useState } from 'react'
import type { RecordView } from '../../../../shared-types/record.ts'
import type { TimeLineView } from '../../../../shared-types/time-line-view.ts'
import { TimeLineDrawing, TimeLineKey } from '../../../drawing/TimeLineDrawing.tsx'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { useKeys } from '../../../parts-of-page/useKeys.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { ConflictArgument } from './ConflictArgument.tsx'
import { DatedRows } from './DatedRows.tsx'
import '../../judgement/judgement.css'
import './dates.css'

const conflictWords = ({ conflicts, allConflictsFound }: TimeLineView): string => {
  if (conflicts.length === 0)
    return allConflictsFound ? 'no conflict among the dates' : 'the search for conflicts was ended by its bound'
  const count = conflicts.length === 1 ? 'one conflict' : `${conflicts.length} conflicts`
  return allConflictsFound ? count : `${count}, perhaps more`
}

const summary = (view: TimeLineView): string =>
  [
    view.built === null
      ? 'nothing bounds the day of building'
      : `built ${view.built.words}${view.built.days === null ? '' : ` (${view.built.days} days)`}`,
    conflictWords(view),
    view.unread.length === 0 ? '' : `${view.unread.length} not read`,
  ]
    .filter((words) => words !== '')
    .join(' · ')

/** Everything dated on the car, closed to a line until it is wanted: T opens it, arrows go down its rows. */
export function Dates({ record }: { readonly record: RecordView }) {
  const answer = useAnswer('dates.timeLine', {}, record.journalNumber)
  const [open, setOpen] = useState(false)
  const whole = useRef<HTMLDivElement>(null)
  const rows = useRef<HTMLDivElement>(null)
  const toggle = () => {
    setOpen(!open)
    // What had the focus is gone once it is closed: the button that opens it has it then.
    const next = () => (open ? whole.current : rows.current)?.querySelector<HTMLElement>('button')?.focus()
    requestAnimationFrame(next)
  }
  useKeys('Dates', [
    { keys: 'T', does: open ? 'close the time line' : 'open the time line of everything dated', run: toggle },
    ...(open ? [{ keys: 'Escape', does: 'close the time line', run: toggle }] : []),
  ])
  const view = answer.value?.view
  return (
    <div ref={whole} className="dates" aria-busy={answer.value === null && answer.busy}>
      <Section
        head="Dates"
        level="column"
        beside={view === undefined ? (answer.busy ? 'reckoning from the record' : '') : summary(view)}
        action={
          <ActionKey
            keys="T"
            label={open ? 'close' : 'open'}
            name={open ? 'Close the time line' : 'Open the time line'}
            onAct={toggle}
          />
        }
      >
        <ProblemNote problem={answer.problem} />
        {open && answer.value !== null ? (
          <div ref={rows}>
            <OpenDates view={answer.value.view} figure={answer.value.figure} />
          </div>
        ) : null}
      </Section>
    </div>
  )
}

function OpenDates({
  view,
  figure,
}: {
  readonly view: TimeLineView
  readonly figure: Parameters<typeof TimeLineDrawing>[0]['figure']
}) {
  return (
    <>
      {view.problem === null ? null : <p className="place-note">{view.problem}</p>}
      {view.conflicts.map((conflict) => (
        <ConflictArgument key={conflict.number} conflict={conflict} />
      ))}
      {figure.rows.length === 0 ? (
        <p className="place-note">Nothing in the record is dated yet. Write down dates on parts as they are read.</p>
      ) : (
        <>
          <TimeLineDrawing figure={figure} />
          <TimeLineKey />
          <DatedRows rows={view.rows} />
        </>
      )}
      {view.unread.length === 0 ? null : (
        <Section head="Not read" beside="a date stays open until its code is known">
          {view.unread.map(({ label, asRead, why }) => (
            <p key={label} className="unread-date">
              <span>{label}</span> <span className="figures">{asRead}</span> <span className="quiet">{why}</span>
            </p>
          ))}
        </Section>
      )}
      <p className="place-note">{view.odometer}</p>
      <p className="place-note">{view.method}</p>
    </>
  )
}
