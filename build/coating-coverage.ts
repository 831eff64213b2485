import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { intervalTable } from '../electron/analysis/coating/interval-table.ts'
import { coverageOf, type StudyRow, studyPanel, tunedShifts } from '../tests/analysis/coating/coverage-study.ts'
import { coverageTable, extentsMark, withTable } from '../tests/analysis/coating/coverage-table.ts'
import { studyRows } from './study-rows.ts'

const densities = [15, 25, 50, 100] as const
type Stage = 'tuning' | 'testing'

/**
 * Prints the coverage on panels never tuned on into DEVELOPERS.md and into the file the program looks it up in; `tune`
 * writes the ends of intervals from tuning panels instead.
 */
export function run(top: string, words: readonly string[]): void {
  const stage: Stage = words[0] === 'tune' ? 'tuning' : 'testing'
  const panels = Number(words[1] ?? (stage === 'tuning' ? 1600 : 400))
  const rows = densities.map((readings) => studied(top, stage, readings, panels))
  const coating = join(top, 'electron', 'analysis', 'coating')
  if (stage === 'tuning') {
    writeFileSync(join(coating, 'interval-table.ts'), shiftsSource(rows))
    return
  }
  writeFileSync(join(coating, 'interval-coverage.ts'), coverageSource(rows))
  const developers = join(top, 'DEVELOPERS.md')
  const table = coverageTable(rows, intervalTable)
  writeFileSync(developers, withTable(readFileSync(developers, 'utf8'), extentsMark, table))
  process.stdout.write(`${table}\n`)
}

const studied = (top: string, stage: Stage, readings: number, panels: number): StudyRow[] =>
  studyRows(top, { folder: 'coating-coverage', name: `${stage}-${readings}`, count: panels }, (at) =>
    studyPanel(stage, readings, at),
  )

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
