import { useMemo, useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import type { TapeKind } from '../../../shared-types/tape-question.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { timeText } from '../identity/day-text.ts'
import { MeasurementForm } from './MeasurementForm.tsx'
import { measuredText } from './measured-text.ts'
import { PictureMeasuring } from './picture/PictureMeasuring.tsx'
import { TapeForm } from './tape/TapeForm.tsx'
import { TapeKinds } from './tape/TapeKinds.tsx'
import { TapeResult } from './tape/TapeResult.tsx'
import '../place-lines.css'

function MeasuringPage({ record }: { readonly record: RecordView }) {
  const [entering, setEntering] = useState(false)
  const [byTape, setByTape] = useState<TapeKind | null>(null)
  const tapes = useAnswer('measuring.kept', {}, record.journalNumber).value
  const verdicts = useMemo(() => new Map(tapes?.map(({ exhibit, answer }) => [exhibit, answer.verdict])), [tapes])
  /** Number of the kept measurement that is opened on its photograph; 0 for a new one. */
  const [onPicture, setOnPicture] = useState<number | null>(null)
  const nameOf = usePanelNames()
  const add = () => {
    if (record.readOnly) return
    setByTape(null)
    setEntering(true)
  }
  const pick = () => {
    if (!record.readOnly) setOnPicture(0)
  }
  useKeys('Measuring', [
    { keys: 'M', does: 'add a measurement', run: add },
    { keys: 'P', does: 'measure on a photograph', run: pick },
  ])
  const rows = record.exhibits.flatMap((exhibit) =>
    exhibit.measurement === null ? [] : [{ exhibit, measurement: exhibit.measurement }],
  )
  if (onPicture !== null) {
    const opened = record.exhibits.find(({ number, picked }) => number === onPicture && picked !== null) ?? null
    return (
      <PictureMeasuring
        key={onPicture}
        record={record}
        kept={opened}
        onKept={setOnPicture}
        onLeave={() => setOnPicture(null)}
      />
    )
  }
  return (
    <PlacePage
      name="Measuring"
      sheetName="Entry"
      {...(entering ? { sheet: <MeasurementForm onLeave={() => setEntering(false)} /> } : {})}
      {...(byTape === null ? {} : { sheet: <TapeForm key={byTape} kind={byTape} onLeave={() => setByTape(null)} /> })}
    >
      {byTape === null ? null : <TapeResult kind={byTape} />}
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
            <ActionKey keys="M" label="add" name="Add a measurement" onAct={add} disabled={record.readOnly} />
          </>
        }
      >
        <TapeKinds onOpen={setByTape} disabled={record.readOnly} />
        <RegisterTable
          label="Measurements"
          rows={rows}
          keyOf={({ exhibit }) => String(exhibit.number)}
          textOf={({ measurement }) => measurement.what}
          onOpen={({ exhibit }) => {
            if (exhibit.picked !== null) setOnPicture(exhibit.number)
          }}
          whenEmpty="No measurement yet. M adds one: what was measured, with what, how, and how exactly."
          columns={[
            {
              id: 'number',
              head: 'exhibit',
              cell: ({ exhibit }) => <ReferenceLink reference={{ kind: 'exhibit', key: String(exhibit.number) }} />,
            },
            {
              id: 'what',
              head: 'what',
              names: true,
              cell: ({ exhibit, measurement }) => (
                <>
                  {measurement.what}
                  <span className="under-line">{exhibit.caption}</span>
                </>
              ),
            },
            {
              id: 'value',
              head: 'value',
              figures: true,
              cell: ({ exhibit, measurement }) => (
                <>
                  <span className="quantity">{measuredText(measurement)}</span>
                  <span className="under-line">{verdicts.get(exhibit.number)}</span>
                </>
              ),
            },
            {
              id: 'method',
              head: 'method and instrument',
              cell: ({ measurement }) => (
                <>
                  {measurement.method === '' ? 'method not stated' : measurement.method}
                  <span className="under-line">
                    {measurement.instrument === '' ? 'instrument not stated' : measurement.instrument}
                  </span>
                </>
              ),
            },
            {
              id: 'panel',
              head: 'panel',
              cell: ({ exhibit }) => (exhibit.panelId === null ? 'whole car' : nameOf(exhibit.panelId)),
            },
            {
              id: 'when',
              head: 'by, when',
              cell: ({ exhibit }) => (
                <>
                  {exhibit.madeBy === '' ? 'by whom not stated' : exhibit.madeBy}
                  <span className="under-line">{timeText(exhibit.addedAt)}</span>
                </>
              ),
            },
          ]}
        />
        <p className="place-note">
          Each measurement is an exhibit: its number stays, and findings and verdicts cite it. One read off a photograph
          opens again with all that was picked: Enter on its line.
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
