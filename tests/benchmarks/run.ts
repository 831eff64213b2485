import { readdirSync } from 'node:fs'
import { join } from 'node:path'

/** One thing measured, paired with its reference in the same run. */
interface Row {
  readonly what: string
  readonly ours: string | number
  readonly reference: string | number | null
  readonly ratio: string | number | null
  readonly aim: string | number
}

const shown = (value: string | number | null): string =>
  typeof value === 'number' ? value.toLocaleString('en', { maximumSignificantDigits: 3 }) : (value ?? '-')

function table(rows: readonly Row[]): string {
  const heads = ['ours', 'reference', 'ratio', 'aim'] as const
  const lines = [[...heads, 'what'], ...rows.map((row) => [...heads.map((head) => shown(row[head])), row.what])]
  const widths = lines[0]?.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0))) ?? []
  return lines
    .map((line) =>
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')
}

/** Measures one bundled module: every function it exports answers rows. */
async function measure(file: string): Promise<Row[]> {
  const module: Record<string, unknown> = await import(file)
  const rows: Row[] = []
  for (const [name, act] of Object.entries(module)) {
    if (typeof act !== 'function') continue
    const began = performance.now()
    process.stderr.write(`- ${name} ...\n`)
    rows.push(...((await act()) as readonly Row[]))
    process.stderr.write(`  ${((performance.now() - began) / 1000).toFixed(1)} s: ${name}\n`)
  }
  return rows
}

const wanted = process.argv.slice(2)
const files = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.bench.mjs') && (wanted.length === 0 || wanted.some((word) => name.includes(word))))
  .sort()
const rows: Row[] = []
for (const file of files) {
  try {
    rows.push(...(await measure(join(import.meta.dirname, file))))
  } catch (fault) {
    process.stderr.write(`${file}: ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}\n`)
    process.exitCode = 1
  }
}
process.stdout.write(`${table(rows)}\n`)
