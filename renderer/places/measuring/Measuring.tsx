import { useMemo, useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import type { TapeKind } from '../../../shared-types/tape-question.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { FasteningForm } from '../parts/FasteningForm.tsx'
import { MeasurementForm } from './MeasurementForm.tsx'
import { type MeasuredRow, MeasurementTable, measuredRows } from './MeasurementTable.tsx'
import { PictureMeasuring } from './picture/PictureMeasuring.tsx'
import { TapeForm } from './tape/TapeForm.tsx'
import { TapeKinds } from './tape/TapeKinds.tsx'
import { TapeResult } from './tape/TapeResult.tsx'
import '../place-lines.css'

/** What is open beside the register: a measurement by hand or by tape, or above it a sample; `number` is null while it is new. */
interface Opened {
  readonly by: 'hand' | 'sample' | TapeKind
  readonly number: number | null
}

function MeasuringPage({ record }: { readonly record: RecordView }) {
  const [opened, setOpened] = useState<Opened | null>(null)
  const tapes = useAnswer('measuring.kept', {}, record.journalNumber).value
  const tapeOf = useMemo(() => new Map(tapes?.map((tape) => [tape.exhibit, tape])), [tapes])
  /** Number of the kept measurement that is opened on its photograph; 0 for a new one. */
  const [onPicture, setOnPicture] = useState<number | null>(null)
  const begin = (by: Opened['by']) => {
    if (!record.readOnly) setOpened({ by, number: null })
  }
  const pick = () => {
    if (!record.readOnly) setOnPicture(0)
  }
  useKeys('Measuring', [
    { keys: 'M', does: 'add a measurement', run: () => begin('hand') },
    { keys: 'P', does: 'measure on a photograph', run: pick },
  ])
  const rows = measuredRows(record)
  const open = ({ exhibit, measurement }: MeasuredRow) => {
    if (exhibit.picked !== null) setOnPicture(exhibit.number)
    else if (!record.readOnly) {
      const by = measurement.sample === undefined ? (measurement.taken?.question.kind ?? 'hand') : 'sample'
      setOpened({ by, number: exhibit.number })
    }
  }
  const exhibit = rows.find((row) => row.exhibit.number === opened?.number)?.exhibit ?? null
  const taken = exhibit?.measurement?.taken
  const captionIsOwn = tapeOf.get(exhibit?.number ?? 0)?.captionIsOwn ?? false
  const tape = useMemo(
    () => (exhibit === null || taken === undefined ? null : { exhibit, taken, captionIsOwn }),
    [exhibit, taken, captionIsOwn],
  )
  const close = () => setOpened(null)
  if (onPicture !== null) {
    const picture = record.exhibits.find(({ number, picked }) => number === onPicture && picked !== null) ?? null
    return (
      <PictureMeasuring
        key={onPicture}
        record={record}
        kept={picture}
        onKept={setOnPicture}
        onLeave={() => setOnPicture(null)}
      />
    )
  }
  return (
    <PlacePage
      name="Measuring"
      sheetName="Entry"
      {...(opened === null || opened.by === 'sample'
        ? {}
        : {
            sheet:
              opened.by === 'hand' ? (
                <MeasurementForm key={opened.number} kept={exhibit} onLeave={close} />
              ) : (
                <TapeForm key={`${opened.by} ${opened.number}`} kind={opened.by} kept={tape} onLeave={close} />
              ),
          })}
    >
      {opened?.by === 'sample' ? <FasteningForm key={opened.number} kept={exhibit} onLeave={close} /> : null}
      {opened === null || opened.by === 'hand' || opened.by === 'sample' ? null : (
        <TapeResult kind={opened.by} kept={tape} />
      )}
      <Section
        head="Measurements"
        level="column"
        beside="with expanded uncertainty, k = 2 (JCGM 100:2008)"
        action={
          <>
            <ActionKey
              keys="P"
              label="on a photograph"
              name="Measure on a photograph"
              onAct={pick}
              disabled={record.readOnly}
            />{' '}
            <ActionKey
              keys="M"
              label="add"
              name="Add a measurement"
              onAct={() => begin('hand')}
              disabled={record.readOnly}
            />
          </>
        }
      >
        <TapeKinds onOpen={begin} disabled={record.readOnly} />
        <MeasurementTable rows={rows} tapeOf={tapeOf} onOpen={open} />
        <p className="place-note">
          Each measurement is an exhibit: its number stays, and findings and verdicts cite it. Enter on its line opens
          it again with all that was read or picked; a tell that takes its value from it follows.
        </p>
        <CautionLines steps={['going under the car', 'opening a drum or clutch']} />
      </Section>
    </PlacePage>
  )
}

/** Measuring: what was measured by hand, each value with its uncertainty or the words that it is not stated. */
export function Measuring() {
  return <RecordPlace name="Measuring">{(record) => <MeasuringPage record={record} />}</RecordPlace>
}
