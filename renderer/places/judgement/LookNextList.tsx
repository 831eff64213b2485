import type { LookNext } from '../../../shared-types/judgement.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'

/** What to look at next, and why it would settle most. */
export function LookNextList({ entries }: { readonly entries: readonly LookNext[] }) {
  const nameOf = usePanelNames()
  return (
    <Section head="Look next" level="column" beside="what would settle most">
      {entries.length === 0 ? (
        <p className="place-note">Nothing is proposed: every panel of the walk was looked at.</p>
      ) : null}
      <ul>
        {entries.map((entry) => (
          <li key={`${entry.panelId} ${entry.what}`} className="question-line">
            <p>
              {entry.panelId === null ? null : (
                <ReferenceLink reference={{ kind: 'panel', key: entry.panelId }} words={nameOf(entry.panelId)} />
              )}{' '}
              {entry.what}
            </p>
            <p className="note">{entry.why}</p>
          </li>
        ))}
      </ul>
    </Section>
  )
}
