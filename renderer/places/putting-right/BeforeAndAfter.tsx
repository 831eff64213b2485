import type { Correction } from '../../../shared-types/correction.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { door } from '../../store/door.ts'

interface BeforeAndAfterProps {
  readonly correction: Correction
  readonly record: RecordView
}

function Pictures(props: { readonly words: string; readonly numbers: readonly number[]; readonly record: RecordView }) {
  const { words, numbers, record } = props
  return (
    <div>
      <h3>{words}</h3>
      {numbers.length === 0 ? <p className="quiet">no exhibit</p> : null}
      {numbers.map((number) => {
        const exhibit = record.exhibits.find((row) => row.number === number)
        return (
          <figure key={number} className="exhibit-large">
            {exhibit === undefined || exhibit.photograph === null ? (
              <p className="quiet">{exhibit?.kind ?? 'not in this record'}</p>
            ) : (
              <img
                src={door().address(`exhibit/${number}/report`)}
                alt={exhibit.caption === '' ? `Exhibit ${number}, no caption` : exhibit.caption}
              />
            )}
            <figcaption>
              <ReferenceLink reference={{ kind: 'exhibit', key: String(number) }} />{' '}
              {exhibit?.photograph?.takenAt ?? 'time not known'} {exhibit?.caption}
            </figcaption>
          </figure>
        )
      })}
    </div>
  )
}

/** The exhibits of one correction side by side: what it was, and what it is now. */
export function BeforeAndAfter({ correction, record }: BeforeAndAfterProps) {
  return (
    <Section head={`K ${correction.number}, before and after`} level="column">
      <div className="before-and-after">
        <Pictures words="before" numbers={correction.exhibitsBefore} record={record} />
        <Pictures words="after" numbers={correction.exhibitsAfter} record={record} />
      </div>
      {correction.findingsAfter.length === 0 ? null : (
        <p className="reference-row">
          findings after:{' '}
          {correction.findingsAfter.map((number) => (
            <ReferenceLink key={number} reference={{ kind: 'finding', key: String(number) }} />
          ))}
        </p>
      )}
    </Section>
  )
}
