import { useMemo } from 'react'
import type { Exhibit } from '../../../../shared-types/exhibit.ts'
import { ProblemError } from '../../../../shared-types/problem-error.ts'
import type { RecordView } from '../../../../shared-types/record.ts'
import { EntrySheet } from '../../../parts-of-page/EntrySheet.tsx'
import { PlacePage } from '../../../parts-of-page/PlacePage.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { useEntry } from '../../../parts-of-page/useEntry.ts'
import { useKeys } from '../../../parts-of-page/useKeys.ts'
import { change } from '../../../store/ask.ts'
import { door } from '../../../store/door.ts'
import { panelOf } from '../measured-panel.ts'
import { TellsFollowing } from '../TellsFollowing.tsx'
import { PhotographChoice } from './PhotographChoice.tsx'
import { PictureFields } from './PictureFields.tsx'
import { PicturePad } from './PicturePad.tsx'
import { PictureResult } from './PictureResult.tsx'
import { pickedOf } from './picked-question.ts'
import { emptyEntry, entryOf, type PictureEntry } from './picture-entry.ts'
import './picture.css'

const padId = 'picture-pad'

/** Kinds of picture a browser draws itself; of the others the copy for the report is shown, at the same places. */
const drawn: readonly string[] = ['image/jpeg', 'image/png', 'image/webp']

const addressOf = ({ number, photograph }: Exhibit): string =>
  door().address(`exhibit/${number}/${drawn.includes(photograph?.mediaType ?? '') ? 'original' : 'report'}`)

async function keep(entry: PictureEntry, kept: Exhibit | null, record: RecordView): Promise<number | null> {
  const told = pickedOf(entry, record.commission.lengthUnit)
  if ('missing' in told) throw new ProblemError('input-refused', told.missing)
  if (entry.what.trim() === '') throw new ProblemError('input-refused', 'Write what was measured.', { field: 'what' })
  const { caption, madeBy, panelId } = entry
  const words = {
    place: kept?.place ?? record.visits.at(-1)?.place ?? '',
    view: kept?.view ?? null,
    at: kept?.at ?? null,
    inReport: kept?.inReport ?? true,
    caption,
    madeBy,
    panelId: panelOf(panelId),
  }
  const said = { words, what: entry.what, picked: told.picked }
  const { number } = await (kept === null
    ? change('exhibit.addPicked', said)
    : change('exhibit.repick', { ...said, number: kept.number }))
  return number
}

interface PictureMeasuringProps {
  readonly record: RecordView
  /** The kept measurement that is opened again; null for a new one. */
  readonly kept: Exhibit | null
  /** Called with the number of the exhibit once it is kept. */
  readonly onKept: (number: number) => void
  readonly onLeave: () => void
}

/** Measuring on a photograph: the picture with what was picked, the sheet with what is known, the result below. */
export function PictureMeasuring({ record, kept, onKept, onLeave }: PictureMeasuringProps) {
  const initial = useMemo(
    () => (kept?.picked == null ? { ...emptyEntry, madeBy: record.commission.examiner } : entryOf(kept, kept.picked)),
    [kept, record.commission.examiner],
  )
  const entry = useEntry<PictureEntry>({
    name: kept === null ? 'exhibit.addPicked' : `exhibit.repick ${kept.number}`,
    initial,
    keep: async (draft) => {
      const number = await keep(draft, kept, record)
      if (number !== null) onKept(number)
    },
    kept: () => undefined,
  })
  useKeys('On the picture', [
    {
      keys: 'F6',
      does: 'between the picture and its sheet',
      whileTyping: true,
      run: () => {
        const pad = document.getElementById(padId)
        const onPad = document.activeElement === pad
        const other = onPad ? document.querySelector<HTMLElement>('.sheet form button, .sheet form input') : pad
        other?.focus()
      },
    },
  ])
  const photographs = record.exhibits.filter(({ photograph }) => photograph !== null)
  const chosen = photographs.find(({ number }) => number === entry.draft.photograph)
  const told = pickedOf(entry.draft, record.commission.lengthUnit)
  const title = kept === null ? 'On a photograph' : `Measurement E\u202f${kept.number}`
  return (
    <PlacePage
      name="Measuring"
      sheetName="Entry"
      sheet={
        <EntrySheet
          title={title}
          over="F6 goes to the picture and back"
          entry={entry}
          onLeave={onLeave}
          withdraw={kept === null ? null : { by: 'exhibit.withdraw', number: kept.number }}
        >
          {kept?.measurement == null ? null : <TellsFollowing number={kept.number} unit={kept.measurement.unit} />}
          <PictureFields entry={entry} photographs={photographs} />
        </EntrySheet>
      }
    >
      <Section
        head={chosen === undefined ? 'Choose a photograph' : `E\u202f${chosen.number}`}
        level="column"
        beside={chosen?.caption ?? ''}
      >
        {chosen?.photograph == null ? (
          <PhotographChoice
            photographs={photographs}
            onChoose={(photograph) => entry.set({ photograph, planePoints: [], measured: [] })}
          />
        ) : (
          <PicturePad
            key={chosen.number}
            id={padId}
            address={addressOf(chosen)}
            size={chosen.photograph}
            name={`E\u202f${chosen.number} ${chosen.caption}`}
            entry={entry.draft}
            set={entry.set}
          />
        )}
        {'missing' in told ? (
          <p className="place-note" role="status">
            {told.missing}
          </p>
        ) : (
          <PictureResult picked={told.picked} exhibit={kept === null || entry.begun ? null : kept.number} />
        )}
      </Section>
    </PlacePage>
  )
}
