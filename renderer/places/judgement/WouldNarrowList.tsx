import { useState } from 'react'
import type { NarrowedRange, WouldNarrow } from '../../../shared-types/judgement.ts'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { boundsText } from './bounds-text.ts'

const FIRST_SHOWN = 8

const rangeWords = { 'original metal': 'metal', 'factory finish': 'paint', parts: 'parts' } as const

/** Points of a hundred; one that rounds to nothing is not printed as nothing. */
const pointsText = (points: number): string => (points < 0.05 ? 'under 0.1' : figureText(points, 1))

function narrowedWords({ range, points, ifYes, ifNo }: NarrowedRange): string {
  return `${rangeWords[range]} narrower by ${pointsText(points)} points: ${boundsText(ifYes)} if original, ${boundsText(ifNo)} if not`
}

function Line({ thing }: { readonly thing: WouldNarrow }) {
  return (
    <li className="question-line">
      <p>
        <ReferenceLink reference={thing.reference} words={thing.label} /> <span className="quiet">{thing.how}</span>
      </p>
      {thing.narrows.map((narrowed) => (
        <p key={narrowed.range} className="note">
          {narrowedWords(narrowed)}
        </p>
      ))}
    </li>
  )
}

/** What to look at, the thing first that keeps a range open most, with what settling it would leave of the range. */
export function WouldNarrowList({ things }: { readonly things: readonly WouldNarrow[] }) {
  const [all, setAll] = useState(false)
  const more = things.length - FIRST_SHOWN
  return (
    <Section head="What to look at" level="column" beside="what keeps a range open most">
      {things.length === 0 ? <p className="place-note">Nothing is open: every panel and part was settled.</p> : null}
      <ul>
        {things.slice(0, all ? undefined : FIRST_SHOWN).map((thing) => (
          <Line key={`${thing.reference.kind} ${thing.reference.key}`} thing={thing} />
        ))}
      </ul>
      {more > 0 ? (
        <button type="button" className="action-key" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? `the first ${FIRST_SHOWN} alone` : `${more} more`}
        </button>
      ) : null}
    </Section>
  )
}
