import { type ReactNode, useId } from 'react'

interface SectionProps {
  readonly head: string
  /** Words beside the head: a count, a basis. */
  readonly beside?: ReactNode
  /** Where the section's action with its key stands. */
  readonly action?: ReactNode
  /** `caps` is a small caps head inside a sheet; `column` is the heading of a column. */
  readonly level?: 'caps' | 'column'
  /** What it shows is of an answer before, and another one is on its way. */
  readonly busy?: boolean
  readonly children: ReactNode
}

/** A section: its head over an ink rule, an action at the right. */
export function Section({ head, beside, action, level = 'caps', busy = false, children }: SectionProps) {
  const id = useId()
  const Heading = level === 'column' ? 'h2' : 'h3'
  return (
    <section className={`section section-${level}`} aria-labelledby={id} aria-busy={busy}>
      <div className="section-head">
        <Heading id={id}>{head}</Heading>
        {beside === undefined ? null : <span className="section-beside">{beside}</span>}
        {action === undefined ? null : <span className="section-action">{action}</span>}
      </div>
      {children}
    </section>
  )
}
