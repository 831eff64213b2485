import { useCallback, useEffect, useMemo, useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { CheckForm } from './CheckForm.tsx'
import { GaugeForm } from './GaugeForm.tsx'
import { GaugeList } from './GaugeList.tsx'
import { GridForm } from './GridForm.tsx'
import { ImportForm } from './ImportForm.tsx'
import { MapOfPanel } from './MapOfPanel.tsx'
import { PanelsRead } from './PanelsRead.tsx'
import { SpotForm } from './SpotForm.tsx'
import { SpotTable } from './SpotTable.tsx'
import { thickestPanel } from './spot-summary.ts'
import { WholeCar } from './WholeCar.tsx'
import '../place-lines.css'
import './coating.css'

interface Opened {
  readonly what: 'spot' | 'gauge' | 'check' | 'grid' | 'columns'
  readonly key: string | null
}

/** What is opened for what is pointed at. */
const pointedAt: ReadonlyMap<string, Opened['what']> = new Map([
  ['gauge', 'gauge'],
  ['gaugeCheck', 'check'],
  ['spotReading', 'spot'],
])

function CoatingSheet(props: {
  readonly record: RecordView
  readonly opened: Opened
  readonly panelId: string | null
  readonly onGridOf: (panelId: string) => void
  readonly onLeave: () => void
}) {
  const { record, opened, onLeave } = props
  const { what, key } = opened
  const at = (row: { readonly number: number }) => String(row.number) === key
  if (what === 'spot') {
    const spot = record.spots.find(at) ?? null
    return <SpotForm key={`r${key}`} row={spot} panelId={props.panelId} onLeave={onLeave} />
  }
  if (what === 'grid' && key !== null)
    return <GridForm record={record} panelId={key} onPanel={props.onGridOf} onLeave={onLeave} />
  if (what === 'columns' && key !== null) return <ImportForm record={record} panelId={key} onLeave={onLeave} />
  if (what === 'gauge') return <GaugeForm key={`g${key}`} row={record.gauges.find(at) ?? null} onLeave={onLeave} />
  return <CheckForm key={`h${key}`} gauge={key === null ? null : Number(key)} onLeave={onLeave} />
}

function CoatingPage({ record }: { readonly record: RecordView }) {
  const [opened, setOpened] = useState<Opened | null>(null)
  const [shown, setShown] = useState<string | null>(null)
  const inHand = useScreenStore((state) => state.inHand)
  const pointed = useScreenStore((state) => state.pointed)
  useEffect(() => {
    const what = pointedAt.get(pointed?.kind ?? '')
    if (pointed === null || what === undefined) return
    setOpened({ what, key: pointed.key })
    useScreenStore.setState({ pointed: null })
  }, [pointed])
  const { readOnly } = record
  const open = useCallback(
    (what: Opened['what'], key: string | null) => {
      if (readOnly) return
      setShown(null)
      setOpened({ what, key })
    },
    [readOnly],
  )
  const gridOf = useCallback(
    (panelId: string | null) => {
      if (panelId === null || readOnly) return
      setOpened({ what: 'grid', key: panelId })
      setShown(panelId)
    },
    [readOnly],
  )
  const openSpot = useCallback((key: string | null) => open('spot', key), [open])
  const thickest = useMemo(() => thickestPanel(record.spots), [record.spots])
  const firstPanel = useRecordStore((state) => state.panelList?.panels[0]?.id ?? null)
  const lastGauge = record.gauges.at(-1)
  const openedSpot =
    opened?.what === 'spot' ? record.spots.find((spot) => String(spot.number) === opened.key) : undefined
  const panelShown = shown ?? openedSpot?.panelId ?? inHand ?? thickest
  const panelInHand = panelShown ?? firstPanel
  const walkGrid = useCallback(() => gridOf(panelInHand), [gridOf, panelInHand])
  const takeColumns = useCallback(() => open('columns', panelInHand), [open, panelInHand])
  useKeys('Coating', [
    { keys: 'R', does: 'add a spot', run: () => open('spot', null) },
    { keys: 'W', does: 'walk the grid of the panel shown', run: walkGrid },
    { keys: 'I', does: 'take readings in from columns', run: takeColumns },
    { keys: 'G', does: 'add a gauge', run: () => open('gauge', null) },
    {
      keys: 'H',
      does: 'add a gauge check',
      run: () => open('check', lastGauge === undefined ? null : String(lastGauge.number)),
    },
  ])
  return (
    <PlacePage
      name="Coating"
      sheetName="Entry"
      {...(opened === null
        ? {}
        : {
            sheet: (
              <CoatingSheet
                record={record}
                opened={opened}
                panelId={inHand}
                onGridOf={gridOf}
                onLeave={() => setOpened(null)}
              />
            ),
          })}
    >
      <div className="two-columns">
        <div className="beside-column">
          <PanelsRead record={record} shown={panelShown} onShow={setShown} />
        </div>
        <div>{panelShown === null ? null : <MapOfPanel record={record} panelId={panelShown} />}</div>
        <div className="of-whole-car">
          <WholeCar record={record} />
        </div>
        <SpotTable
          record={record}
          chosen={opened?.what === 'spot' ? opened.key : null}
          onOpen={openSpot}
          onGrid={walkGrid}
          onColumns={takeColumns}
        />
        <div className="of-gauges">
          <GaugeList record={record} onGauge={(key) => open('gauge', key)} onCheck={(gauge) => open('check', gauge)} />
          <CautionLines steps={['sanding or cutting']} />
        </div>
      </div>
    </PlacePage>
  )
}

/** Coating: thickness readings as read, spot by spot, and the map of the panel in hand. */
export function Coating() {
  return <RecordPlace name="Coating">{(record) => <CoatingPage record={record} />}</RecordPlace>
}
