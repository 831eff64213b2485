import { appendFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Rows of a study, the first `count` of it; those worked out in an earlier run are kept in `.built/FOLDER/NAME.jsonl`, so
 * that a run can be stopped and taken up. Remove the folder after a change of the model.
 */
export function studyRows<Row>(
  top: string,
  { folder, name, count }: { readonly folder: string; readonly name: string; readonly count: number },
  rowAt: (at: number) => Row,
): Row[] {
  const file = join(top, '.built', folder, `${name}.jsonl`)
  mkdirSync(join(top, '.built', folder), { recursive: true })
  const lines = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : []
  const rows = lines.filter((line) => line !== '').map((line): Row => JSON.parse(line))
  for (let at = rows.length; at < count; at += 1) {
    const row = rowAt(at)
    rows.push(row)
    appendFileSync(file, `${JSON.stringify(row)}\n`)
    if (at % 100 === 99) process.stderr.write(`${name}: ${at + 1} of ${count}\n`)
  }
  return rows.slice(0, count)
}
