import type { DensityShifts } from '../../../electron/analysis/coating/interval-shifts.ts'
import { NINETY_BAND } from '../../../electron/analysis/coating/interval-trust.ts'
import { byEvidence, type Coverage, coverageOf, type StudyRow } from './coverage-study.ts'
import { panelKinds } from './simulated-filler.ts'

/** A table's place in a text: between two lines nobody sees. */
interface TableMark {
  readonly begin: string
  readonly end: string
}
export const extentsMark: TableMark = {
  begin: '<!-- coverage of filler intervals, written by `node build/coating-coverage.mjs` -->',
  end: '<!-- end of the coverage -->',
}
export const changesMark: TableMark = {
  begin: '<!-- coverage of differences, written by `node build/change-coverage.mjs` -->',
  end: '<!-- end of the differences -->',
}

const figures = ({ share, medianWidth, medianError, bias }: Coverage): string =>
  `${share.toFixed(3)} | ${medianWidth.toFixed(2)} | ${medianError.toFixed(2)} | ${bias < 0 ? '−' : '+'}${Math.abs(bias).toFixed(2)}`

/** The coverage study as a table for those who build: every number of readings, then by what was read and what lay there. */
export function coverageTable(rows: readonly (readonly StudyRow[])[], table: readonly DensityShifts[]): string {
  const line = (readings: number, name: string, own: readonly StudyRow[]): string =>
    `| ${readings} | ${name} | ${own.length} | ${figures(coverageOf(own, 'area', table))} | ${figures(coverageOf(own, 'volume', table))} |`
  const outside = rows.flatMap((own) =>
    (['area', 'volume'] as const).flatMap((extent) => {
      const { share } = coverageOf(own, extent, table)
      const inside = share >= NINETY_BAND[0] && share <= NINETY_BAND[1]
      return inside ? [] : [`${extent} at ${own[0]?.readings} readings (${share.toFixed(3)})`]
    }),
  )
  const all = rows.map((own) => line(own[0]?.readings ?? 0, 'all', own))
  const parts = rows.flatMap((own) => [
    ...byEvidence(own)
      .filter(([, some]) => some.length > 0)
      .map(([kind, some]) => line(own[0]?.readings ?? 0, `thicker than paint: ${kind}`, some)),
    ...panelKinds.map((kind) =>
      line(
        own[0]?.readings ?? 0,
        kind,
        own.filter((row) => row.kind === kind),
      ),
    ),
  ])
  return [
    '| readings | panels with | number | area: held | width | error | bias | volume: held | width | error | bias |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...all,
    ...parts,
    '',
    `Held: share of panels whose truth lay in the interval of nominally 90 %; by ${NINETY_BAND[0]} to ${NINETY_BAND[1]} for 400 panels it may be`,
    'called that. Width and error (middle less truth, without sign) are medians by the truth, bias is the mean error by the mean truth.',
    outside.length === 0
      ? 'No number of readings lies outside that band.'
      : `Outside the band, and therefore not called 90 % on screen: ${outside.join('; ')}.`,
  ].join('\n')
}

/** Puts the table between its marks. @throws when a text has none. */
export function withTable(text: string, { begin, end }: TableMark, table: string): string {
  const [from, to] = [text.indexOf(begin), text.indexOf(end)]
  if (from === -1 || to < from) throw new Error(`There is no place for the table: write “${begin}” and “${end}”.`)
  return `${text.slice(0, from + begin.length)}\n${table}\n${text.slice(to)}`
}
