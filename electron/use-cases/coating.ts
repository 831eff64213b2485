import { requireCited } from './citations.ts'
import { numberedRows } from './numbered-rows.ts'
import { panelNameIn, requirePanel } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'

const readings = (count: number) => `${count} ${count === 1 ? 'reading' : 'readings'}`

const spots = numberedRows({
  register: 'spots',
  command: 'spot',
  noun: 'Spot',
  describe: (spot, now) => `${readings(spot.values.length)}, ${panelNameIn(now, spot.panelId)}`,
  check: (spot, now) => {
    requirePanel(now, spot.panelId, 'draft.panelId')
    requireCited(now, 'exhibits', spot.exhibits, 'draft.exhibits')
    requireCited(now, 'gauges', spot.gauge === null ? [] : [spot.gauge], 'draft.gauge')
  },
})

const gauges = numberedRows({
  register: 'gauges',
  command: 'gauge',
  noun: 'Gauge',
  describe: (gauge) => gauge.name,
  check: () => undefined,
})

const gaugeChecks = numberedRows({
  register: 'gaugeChecks',
  command: 'gaugeCheck',
  noun: 'Gauge check',
  describe: (check) => `${check.when}, ${rowMark('gauges', check.gauge)}, ${readings(check.readUm.length)}`,
  check: (check, now) => requireCited(now, 'gauges', [check.gauge], 'draft.gauge'),
})

/** Coating readings, the gauges they were taken with, and the checks of those gauges. */
export const coatingUseCases: Pick<
  UseCases,
  'spot.add' | 'spot.amend' | 'spot.withdraw' | 'gauge.add' | 'gauge.amend' | 'gaugeCheck.add' | 'gaugeCheck.withdraw'
> = {
  'spot.add': spots.add,
  'spot.amend': spots.amend,
  'spot.withdraw': spots.withdraw,
  'gauge.add': gauges.add,
  'gauge.amend': gauges.amend,
  'gaugeCheck.add': gaugeChecks.add,
  'gaugeCheck.withdraw': gaugeChecks.withdraw,
}
