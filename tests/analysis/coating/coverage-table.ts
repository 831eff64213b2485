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

/** Panels whose last readings were taken where the program said. */
interface FollowedPanels {
  readonly first: number
  readonly more: number
  readonly rows: readonly StudyRow[]
}

/**
 * The coverage study as a table for those who build: every number of readings, panels read by the rule, then by what was read
 * and what lay there.
 */
export function coverageTable(
  rows: readonly (readonly StudyRow[])[],
  followed: readonly FollowedPanels[],
  table: readonly DensityShifts[],
): string {
  const line = (readings: number | string, name: string, own: readonly StudyRow[]): string =>
    `| ${readings} | ${name} | ${own.length} | ${figures(coverageOf(own, 'area', table))} | ${figures(coverageOf(own, 'volume', table))} |`
  const byRule = followed.map((some) => [`${some.first}, then ${some.more} by the rule`, some.rows] as const)
  const sharesOf = (some: readonly (readonly [string, readonly StudyRow[]])[]) =>
    some.flatMap(([name, own]) =>
      (['area', 'volume'] as const).map((extent) => ({
        what: `${extent} at ${name}`,
        share: coverageOf(own, extent, table).share,
      })),
    )
  const beside = sharesOf(byRule).filter(({ share }) => share < NINETY_BAND[0] || share > NINETY_BAND[1])
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
    ...byRule.map(([name, own]) => line(name, 'all', own)),
    ...parts,
    '',
    `Held: share of panels whose truth lay in the interval of nominally 90 %; by ${NINETY_BAND[0]} to ${NINETY_BAND[1]} for 400 panels it may be`,
    'called that. Width and error (middle less truth, without sign) are medians by the truth, bias is the mean error by the mean truth.',
    besideBand(sharesOf(rows.map((own) => [`${own[0]?.readings} readings`, own] as const))),
    ...(beside.length === 0
      ? []
      : [`Outside it where the last readings followed the rule, which the screen cannot know: ${toldShares(beside)}.`]),
  ].join('\n')
}

interface NamedShare {
  readonly what: string
  readonly share: number
}

const toldShares = (some: readonly NamedShare[]): string =>
  some.map(({ what, share }) => `${what} (${share.toFixed(4)})`).join('; ')

/** Which shares lie beside the band of 90 %, and what such intervals are called on screen. */
export function besideBand(shares: readonly NamedShare[]): string {
  const below = shares.filter(({ share }) => share < NINETY_BAND[0])
  const above = shares.filter(({ share }) => share > NINETY_BAND[1])
  if (below.length + above.length === 0) return 'No number of readings lies outside that band.'
  return [
    ...(below.length === 0 ? [] : [`Below the band, and not called 90 % on screen: ${toldShares(below)}.`]),
    ...(above.length === 0 ? [] : [`Above it, and called at least 90 % on screen: ${toldShares(above)}.`]),
  ].join(' ')
}

/** Puts the table between its marks. @throws when a text has none. */
export function withTable(text: string, { begin, end }: TableMark, table: string): string {
  const [from, to] = [text.indexOf(begin), text.indexOf(end)]
  if (from === -1 || to < from) throw new Error(`There is no place for the table: write “${begin}” and “${end}”.`)
  return `${text.slice(0, from + begin.length)}\n${table}\n${text.slice(to)}`
}
