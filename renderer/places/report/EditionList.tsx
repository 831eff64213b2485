import { Button } from 'react-aria-components/Button'
import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { door } from '../../store/door.ts'
import { timeText } from '../identity/day-text.ts'

interface EditionListProps {
  readonly record: RecordView
  readonly shown: number | null
  readonly onShow: (edition: number) => void
  readonly onIssue: () => void
}

/** Issued editions, newest first: number, time, why, and the hash by which a copy can be checked. */
export function EditionList({ record, shown, onShow, onIssue }: EditionListProps) {
  return (
    <Section
      head="Editions"
      level="column"
      beside={record.editions.length === 0 ? 'none issued' : `${record.editions.length} issued`}
      action={<ActionKey keys="I" label="issue" name="Issue an edition" onAct={onIssue} disabled={record.readOnly} />}
    >
      {record.editions.length === 0 ? (
        <p className="place-note">
          Nothing has been issued. Read every page of the preview; then I issues the first edition.
        </p>
      ) : null}
      <ul>
        {record.editions.toReversed().map((edition) => (
          <li key={edition.number} className="edition">
            <p>
              <span className="strong">Edition {edition.number}</span>{' '}
              <span className="figures">{edition.reportNumber}</span>
              <span className="edition-acts">
                <Button
                  className="place-link"
                  aria-label={`${shown === edition.number ? 'shown' : 'show'}: edition ${edition.number}`}
                  onPress={() => onShow(edition.number)}
                >
                  {shown === edition.number ? 'shown' : 'show'}
                </Button>
                <a
                  className="place-link"
                  href={door().address(`edition/${edition.number}`)}
                  download={`${edition.reportNumber}.pdf`}
                  aria-label={`save PDF of edition ${edition.number}`}
                >
                  save PDF
                </a>
              </span>
            </p>
            <p className="note">
              {timeText(edition.issuedAt)} · {edition.paper} · {edition.pages} pages ·{' '}
              {figureText(edition.byteLength / 1e6, 2)} MB · journal entry {edition.journalNumber}
            </p>
            {edition.reason === '' ? null : <p className="note">Why: {edition.reason}</p>}
            <p className="edition-hash figures">SHA-256 {edition.sha256}</p>
          </li>
        ))}
      </ul>
    </Section>
  )
}
