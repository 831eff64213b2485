import { Section } from '../../parts-of-page/Section.tsx'
import { type GroupCount, groupWords } from './part-rows.ts'

interface GroupCountsProps {
  readonly counts: readonly GroupCount[]
  readonly group: string
  readonly onGroup: (group: string) => void
}

/** Groups of parts with how many of each were seen; choosing one leaves only its parts in the list. */
export function GroupCounts({ counts, group, onGroup }: GroupCountsProps) {
  const all = counts.reduce((sum, count) => sum + count.all, 0)
  const seen = counts.reduce((sum, count) => sum + count.seen, 0)
  const line = (name: string, words: string, seenOf: number, allOf: number) => (
    <li key={words}>
      <button type="button" className="group-row" aria-pressed={group === name} onClick={() => onGroup(name)}>
        <span>{words}</span>
        <span>
          <span className="figures">{seenOf}</span>{' '}
          <span className="quiet">
            of <span className="figures group-all">{allOf}</span>
          </span>
        </span>
      </button>
    </li>
  )
  return (
    <Section head="Groups" level="column" beside="seen, of all">
      <ul>
        {line('', 'every group', seen, all)}
        {counts.map((count) => line(count.group, groupWords(count.group), count.seen, count.all))}
      </ul>
      <p className="place-note">
        A part nobody has looked at is not seen; that is not the same as missing, or as fine.
      </p>
    </Section>
  )
}
