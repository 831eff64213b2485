import { useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { timeText } from '../identity/day-text.ts'
import { MeasurementForm } from './MeasurementForm.tsx'
import { measuredText } from './measured-text.ts'
import '../place-lines.css'

function MeasuringPage({ record }: { readonly record: RecordView }) {
  const [entering, setEntering] = useState(false)
  const nameOf = usePanelNames()
  const add = () => {
    if (!record.readOnly) setEntering(true)
  }
  useKeys('Measuring', [{ keys: 'M', does: 'add a measurement', run: add }])
  const rows = record.exhibits.flatMap((exhibit) =>
    exhibit.measurement === null ? [] : [{ exhibit, measurement: exhibit.measurement }],
  )
  return (
    <PlacePage
      name="Measuring"
      sheetName="Entry"
      {...(entering ? { sheet: <MeasurementForm onLeave={() => setEntering(false)} /> } : {})}
    >
      <Section
        head="Measurements"
        level="column"
        beside="with expanded uncertainty, k = 2 (JCGM 100:2008)"
        action={<ActionKey keys="M" label="add" name="Add a measurement" onAct={add} disabled={record.readOnly} />}
      >
        <RegisterTable
          label="Measurements"
          rows={rows}
          keyOf={({ exhibit }) => String(exhibit.number)}
          textOf={({ measurement }) => measurement.what}
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
              cell: ({ measurement }) => <span className="quantity">{measuredText(measurement)}</span>,
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
          Each measurement is an exhibit: its number stays, and findings and verdicts cite it. Dimensions read off
          photographs are not computed here.
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
