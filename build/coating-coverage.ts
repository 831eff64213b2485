import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { intervalTable } from '../electron/analysis/coating/interval-table.ts'
import {
  coverageOf,
  followedPanel,
  type StudyRow,
  studyPanel,
  tunedShifts,
  tuningPanel,
} from '../tests/analysis/coating/coverage-study.ts'
import { coverageTable, extentsMark, withTable } from '../tests/analysis/coating/coverage-table.ts'
import { studyRows } from './study-rows.ts'

const densities = [15, 25, 50, 100] as const
/** Readings taken first, and those then taken where the program says the next is worth most. */
const followed = [
  [15, 10],
  [25, 15],
  [50, 15],
] as const

/**
 * Prints the coverage on panels never tuned on into DEVELOPERS.md and into the file the program looks it up in; `tune`
 * writes the ends of intervals from tuning panels instead.
 */
export function run(top: string, words: readonly string[]): void {
  const coating = join(top, 'electron', 'analysis', 'coating')
  const kept = (name: string, count: number, rowAt: (at: number) => StudyRow): StudyRow[] =>
    studyRows(top, { folder: 'coating-coverage', name, count }, rowAt)
  if (words[0] === 'tune') {
    const panels = Number(words[1] ?? 1600)
    const rows = densities.map((readings) => kept(`tuning-${readings}`, panels, (at) => tuningPanel(readings, at)))
    writeFileSync(join(coating, 'interval-table.ts'), shiftsSource(rows))
    return
  }
  const panels = Number(words[1] ?? 400)
  const rows = densities.map((readings) =>
    kept(`held-back-${readings}`, panels, (at) => studyPanel('held back', readings, at)),
  )
  writeFileSync(join(coating, 'interval-coverage.ts'), coverageSource(rows))
  const developers = join(top, 'DEVELOPERS.md')
  const byRule = followed.map(([first, more]) => ({
    first,
    more,
    rows: kept(`held-back-${first}-${more}`, panels, (at) => followedPanel('held back', [first, more], at)),
  }))
  const table = coverageTable(rows, byRule, intervalTable)
  writeFileSync(developers, withTable(readFileSync(developers, 'utf8'), extentsMark, table))
  process.stdout.write(`${table}\n`)
}

const shiftsSource = (rows: readonly StudyRow[][]): string => `import type { DensityShifts } from './interval-shifts.ts'

/** Written by \`node build/coating-coverage.mjs tune\`, from simulated panels whose seeds serve for nothing else. */
export const intervalTable: readonly DensityShifts[] = ${JSON.stringify(rows.map(tunedShifts), null, 2)}
`

function coverageSource(rows: readonly StudyRow[][]): string {
  const share = (own: readonly StudyRow[], extent: 'area' | 'volume'): string =>
    String(Number(coverageOf(own, extent, intervalTable).share.toFixed(4)))
  const lines = rows.map(
    (own) =>
      `  { readings: ${own[0]?.readings}, panels: ${own.length}, area: ${share(own, 'area')}, volume: ${share(own, 'volume')} },`,
  )
  return `import type { MeasuredCoverage } from './interval-shifts.ts'

/** Written by \`node build/coating-coverage.mjs\`, from simulated panels whose seeds serve for nothing else. */
export const intervalCoverage: readonly MeasuredCoverage[] = [
${lines.join('\n')}
]
`
}
