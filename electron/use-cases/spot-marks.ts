import type { CoatingCar } from '../../shared-types/coating-car.ts'
import { type CoatingMeasures, coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { groupedBy } from '../analysis/statistics/grouped-by.ts'
import { edgeDistanceMm } from '../figures/edge-distance.ts'
import { type PlacedPanel, placedPanel } from './coating-question.ts'
import { CHECK_MISSING, type GaugeRead, gaugesRead, type SpotRead, spotsRead } from './spots-read.ts'

/** A reading with a flag where its probe stood too near an edge of the panel as drawn. */
export function withEdge(
  read: SpotRead,
  { view, panel }: PlacedPanel,
  gauges: ReadonlyMap<number | null, GaugeRead>,
  { smallLength }: CoatingMeasures,
): SpotRead {
  const { spot } = read
  const probeMm = gauges.get(spot.gauge)?.gauge?.probeDiameterMm ?? null
  if (spot.at === null || spot.view !== view.id || probeMm === null) return read
  const edgeMm = edgeDistanceMm(panel.outline, spot.at)
  if (edgeMm >= probeMm) return read
  const near = `too near an edge for a probe of ${smallLength.text(probeMm)}: ${smallLength.text(Math.round(edgeMm))}`
  return { ...read, flags: [...read.flags, near] }
}

/** Flags that speak against the reading itself; a further check would lift the others. */
export const speaksAgainst = (flags: readonly string[]): readonly string[] =>
  flags.filter((flag) => !CHECK_MISSING.includes(flag))

/** Every spot of the record whose reading something speaks against, with the reasons. */
export function markedSpots(view: RecordView): CoatingCar['marked'] {
  const gauges = gaugesRead(view)
  const measures = coatingMeasures(view.commission)
  return [...groupedBy(spotsRead(gauges, view.spots), ({ spot }) => spot.panelId)]
    .flatMap(([panelId, own]) => {
      const spots = own.map(({ spot }) => spot)
      const placed = placedPanel(view, panelId, spots)
      return placed === null ? own : own.map((read) => withEdge(read, placed, gauges, measures))
    })
    .map(({ spot, flags }) => ({ spot: spot.number, why: speaksAgainst(flags) }))
    .filter(({ why }) => why.length > 0)
    .toSorted((one, other) => one.spot - other.spot)
}
