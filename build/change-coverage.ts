import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type ChangeRow, changeCoverage, studyChange } from '../tests/analysis/coating/change-study.ts'
import { changeTable } from '../tests/analysis/coating/change-table.ts'
import { changesMark, withTable } from '../tests/analysis/coating/coverage-table.ts'
import { studyRows } from './study-rows.ts'

const densities = [15, 25, 50, 100] as const

/**
 * Prints how often intervals of a difference hold the truth, on pairs of panels nothing was set on, into DEVELOPERS.md and
 * into the file the program looks it up in.
 */
export function run(top: string, words: readonly string[]): void {
  const count = Number(words[0] ?? 400)
  const rows = densities.map((readings) =>
    studyRows(top, { folder: 'change-coverage', name: `testing-${readings}`, count }, (at) =>
      studyChange('change testing', readings, at),
    ),
  )
  writeFileSync(join(top, 'electron', 'analysis', 'coating', 'change-coverage.ts'), coverageSource(rows))
  const developers = join(top, 'DEVELOPERS.md')
  const table = changeTable(rows)
  writeFileSync(developers, withTable(readFileSync(developers, 'utf8'), changesMark, table))
  process.stdout.write(`${table}\n`)
}

function coverageSource(rows: readonly ChangeRow[][]): string {
  const lines = rows.map((own) => {
    const share = (extent: 'area' | 'volume') => Number(changeCoverage(own, extent).share.toFixed(4))
    return `  { readings: ${own[0]?.readings}, panels: ${own.length}, area: ${share('area')}, volume: ${share('volume')} },`
  })
  return `import type { MeasuredCoverage } from './interval-shifts.ts'

/** Written by \`node build/change-coverage.mjs\`, from simulated panels before and after work whose seeds serve for nothing else. */
export const changeCoverage: readonly MeasuredCoverage[] = [
${lines.join('\n')}
]
`
}
