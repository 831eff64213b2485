import { type DeclaredError, usualGaugeError } from '../../shared-types/coating.ts'
import { type CoatingMeasures, coatingMeasures } from '../../shared-types/coating-measures.ts'
import type { Gauge, Spot } from '../../shared-types/reading.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { type CheckedGauge, checkedGauge, checkedReading } from '../analysis/coating/checked-gauge.ts'
import type { ReadingCover } from '../analysis/coating/gauge-drift.ts'
import { substrateFlag } from '../analysis/coating/place-words.ts'
import { groupedBy } from '../analysis/statistics/grouped-by.ts'
import { spotSummary } from '../analysis/statistics/spot-summary.ts'
import { substrateTable } from '../sheets/coating-lists.ts'
import { rowMark } from './row-marks.ts'

/** A spot with its mean as read and as put right by the checks of its gauge. */
export interface SpotRead {
  readonly spot: Spot
  readonly kind: 'value' | 'more than' | 'no reading'
  /** Mean as read, and put right; null where the gauge gave none. */
  readonly readUm: number | null
  readonly um: number | null
  readonly uncertaintyUm: number
  /** What is to be known of its gauge at that time; empty when it was checked before and after. */
  readonly flags: readonly string[]
  readonly beyondShims: boolean
}

/** Flags of a reading that a further check would lift; all others speak against the reading itself. */
export const CHECK_MISSING: readonly string[] = ['no check before', 'no check after'] satisfies ReadingCover[]

/** A gauge of the record, or what stands for one that was not noted. */
export interface GaugeRead {
  readonly gauge: Gauge | null
  readonly checked: CheckedGauge
  /** Which gauge, with its declared error. */
  readonly words: string
}

/** Every gauge of the record judged by its checks; null is the key of readings whose gauge was not noted. */
export function gaugesRead(view: RecordView): ReadonlyMap<number | null, GaugeRead> {
  const measures = coatingMeasures(view.commission)
  return new Map<number | null, GaugeRead>([
    [null, gaugeRead(view, null, measures)],
    ...view.gauges.map((gauge): [number, GaugeRead] => [gauge.number, gaugeRead(view, gauge, measures)]),
  ])
}

function gaugeRead(view: RecordView, gauge: Gauge | null, measures: CoatingMeasures): GaugeRead {
  const checks = view.gaugeChecks
    .filter((check) => check.gauge === gauge?.number)
    .map(({ at, shimUm, readUm }) => ({ at, shimUm, shimUncertaintyUm: 0, readUm }))
  if (gauge === null || gauge.errorUm === null) {
    const named = gauge === null ? 'gauge not noted' : `${rowMark('gauges', gauge.number)} ${gauge.name}`
    const words = `${named}, declared error not noted; ${errorWords(usualGaugeError, measures)} supposed (common practice, no source)`
    return { gauge, checked: checkedGauge(checks, usualGaugeError, measures), words }
  }
  const { number, name, errorUm, errorPercent } = gauge
  const declared: DeclaredError = { constantUm: errorUm, percent: errorPercent ?? 0, meaning: 'tolerance' }
  return {
    gauge,
    checked: checkedGauge(checks, declared, measures),
    words: `${rowMark('gauges', number)} ${name}, declared error ${errorWords(declared, measures)}`,
  }
}

const errorWords = ({ constantUm, percent }: DeclaredError, { notedThickness }: CoatingMeasures): string =>
  `${notedThickness.text(constantUm)} + ${percent} % of the reading`

/** The gauge that read most of the spots. */
export function mainGauge(gauges: ReadonlyMap<number | null, GaugeRead>, spots: readonly Spot[]): GaugeRead {
  const [most] = [...groupedBy(spots, ({ gauge }) => gauge)].toSorted(([, a], [, b]) => b.length - a.length)
  return gauges.get(most?.[0] ?? null) ?? (gauges.get(null) as GaugeRead)
}

/**
 * Spots that speak of the car as it stands: without those a correction that was done cites as read before it. Each of those is
 * told with the correction it belongs to.
 */
export function standingSpots({ spots, corrections }: RecordView): {
  readonly standing: readonly Spot[]
  readonly before: ReadonlyMap<number, number>
} {
  const before = new Map(
    corrections
      .filter(({ state }) => state !== 'planned')
      .flatMap(({ number, coating }) => (coating?.before ?? []).map((spot): [number, number] => [spot.number, number])),
  )
  return { standing: spots.filter(({ number }) => !before.has(number)), before }
}

/** Spots with their means put right. Checks are taken as made on steel, so a dual gauge's readings over other metals stay as read. */
export function spotsRead(gauges: ReadonlyMap<number | null, GaugeRead>, spots: readonly Spot[]): SpotRead[] {
  return spots.map((spot) => {
    const { meanUm, atLeast } = spotSummary({ values: spot.values, gauge: null })
    const { gauge, checked } = mainGauge(gauges, [spot])
    const below = substrateFlag(substrateTable(), gauge?.principle ?? null, spot)
    const said = below === null ? [] : [below.words]
    if (meanUm === null || below?.reads === false)
      return { spot, kind: 'no reading', readUm: meanUm, um: null, uncertaintyUm: 0, flags: said, beyondShims: false }
    const corrects = gauge?.principle !== 'dual' || spot.mode !== 'eddy current'
    const { um, standardUncertaintyUm, cover, beyondShims } = checkedReading(checked, meanUm, spot.readAt, corrects)
    return {
      spot,
      kind: atLeast ? 'more than' : 'value',
      readUm: meanUm,
      um,
      uncertaintyUm: standardUncertaintyUm,
      flags: cover === 'checked before and after' ? said : [cover, ...said],
      beyondShims,
    }
  })
}
