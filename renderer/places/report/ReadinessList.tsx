import { Button } from 'react-aria-components/Button'
import type { MissingLine } from '../../../shared-types/missing-line.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { goToEntry } from '../../store/follow-reference.ts'
import { placeList } from '../../store/place-list.ts'
import { goToPlace } from '../../store/screen-store.ts'
import type { Answer } from '../../store/use-answer.ts'

interface ReadinessListProps {
  readonly readiness: Answer<readonly MissingLine[]>
  /** Nothing can be entered: the places are shown, and no entry is opened. */
  readonly readOnly: boolean
}

/** What a report must state and the record does not say yet, each with the way to the field where it is said. */
export function ReadinessList({ readiness, readOnly }: ReadinessListProps) {
  const lines = readiness.value ?? []
  return (
    <Section
      head="Still to state"
      level="column"
      beside={
        readiness.value === null
          ? 'reading the record'
          : lines.length === 0
            ? 'nothing'
            : `${lines.length} of what a report must say`
      }
    >
      <ProblemNote problem={readiness.problem} />
      {readiness.value !== null && lines.length === 0 ? (
        <p className="place-note">
          Everything a report must say is in the record. That is no judgement of whether it is right.
        </p>
      ) : null}
      <ul>
        {lines.map((line) => {
          const place = placeList.find(({ id, name }) => id === line.place || name === line.place)
          return (
            <li key={`${line.line} ${line.missing}`} className="readiness-line">
              <p>{line.missing}</p>
              <p className="note">report checklist, line {line.line}</p>
              {place === undefined ? (
                <span className="note">{line.place}</span>
              ) : (
                <Button
                  className="place-link"
                  aria-label={`Go to ${place.name}: ${line.missing}`}
                  onPress={() => (readOnly ? goToPlace(place.id) : goToEntry(line.at))}
                >
                  {place.name}
                </Button>
              )}
            </li>
          )
        })}
      </ul>
    </Section>
  )
}
