import { appendFileSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { intervalTable } from '../electron/analysis/coating/interval-table.ts'
import {
  byEvidence,
  type Coverage,
  coverageOf,
  type StudyRow,
  studyPanel,
  tunedShifts,
} from '../tests/analysis/coating/coverage-study.ts'
import { panelKinds } from '../tests/analysis/coating/simulated-filler.ts'

const densities = [15, 25, 50, 100] as const
type Stage = 'tuning' | 'testing'

/**
 * `tune` writes the ends of intervals from tuning panels; `test` prints the coverage on panels never tuned on. Panels once
 * drawn are kept in `.built/coating-coverage`, so that a run can be stopped and taken up; remove it after a change of the model.
 */
export function run(top: string, words: readonly string[]): void {
  const stage: Stage = words[0] === 'tune' ? 'tuning' : 'testing'
  const panels = Number(words[1] ?? (stage === 'tuning' ? 1600 : 1000))
  const wanted = densities.filter((readings) => words.length < 3 || words.slice(2).includes(String(readings)))
  const rows = wanted.map((readings) => studied(top, stage, readings, panels))
  if (stage === 'tuning' && wanted.length === densities.length)
    writeFileSync(join(top, 'electron', 'analysis', 'coating', 'interval-table.ts'), tableSource(rows))
  if (stage === 'testing') process.stdout.write(rows.map((own) => report(own)).join('\n'))
}

function studied(top: string, stage: Stage, readings: number, panels: number): StudyRow[] {
  const folder = join(top, '.built', 'coating-coverage')
  const file = join(folder, `${stage}-${readings}.jsonl`)
  mkdirSync(folder, { recursive: true })
  const lines = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : []
  const rows = lines.filter((line) => line !== '').map((line): StudyRow => JSON.parse(line))
  for (let at = rows.length; at < panels; at += 1) {
    const row = studyPanel(stage, readings, at)
    rows.push(row)
    appendFileSync(file, `${JSON.stringify(row)}\n`)
    if (at % 100 === 99) process.stderr.write(`${stage}, ${readings} readings: ${at + 1} of ${panels} panels\n`)
  }
  return rows.slice(0, panels)
}

const tableSource = (rows: readonly StudyRow[][]): string => `import type { DensityShifts } from './interval-shifts.ts'

/** Written by \`node build/coating-coverage.mjs tune\`, from simulated panels whose seeds serve for nothing else. */
export const intervalTable: readonly DensityShifts[] = ${JSON.stringify(rows.map(tunedShifts), null, 2)}
`

/** Rows of the table for one number of readings: all panels, then by what the readings showed and what lay there. */
function report(rows: readonly StudyRow[]): string {
  const readings = rows[0]?.readings ?? 0
  const line = (name: string, own: readonly StudyRow[]): string => {
    const cells = (['area', 'volume'] as const).map((extent) => {
      const set = coverageOf(own, extent, intervalTable)
      const drawn = coverageOf(own, extent, null)
      return `${figures(set)} | ${drawn.share.toFixed(3)}`
    })
    return `| ${readings} | ${name} | ${own.length} | ${cells.join(' | ')} |\n`
  }
  return [
    line('all', rows),
    ...byEvidence(rows)
      .filter(([, own]) => own.length > 0)
      .map(([kind, own]) => line(`more than paint read: ${kind}`, own)),
    ...panelKinds.map((kind) =>
      line(
        kind,
        rows.filter((row) => row.kind === kind),
      ),
    ),
  ].join('')
}

const figures = ({ share, medianWidth, medianError, bias }: Coverage): string =>
  `${share.toFixed(3)} | ${medianWidth.toFixed(2)} | ${medianError.toFixed(2)} | ${bias.toFixed(2)}`
