import { spawn } from 'node:child_process'
import { once } from 'node:events'
import type { CarRecord } from '../../../electron/record/car-record.ts'
import { Connection } from '../../../electron/record/connection.ts'
import { everyRow } from '../../../electron/record/journal.ts'
import { stepsOf } from '../../../electron/record/journalled-changes.ts'
import { createRecord, makeFile } from '../../../electron/record/open-record.ts'
import { addFinding, amendFinding, beginning, scratchFolder } from '../../record/sample-record.ts'

const COMMANDS = 1000
const ROUNDS = 7

/** Adds and amends findings by turns, each awaited before the next, and closes; answers commands per second. */
async function ours(record: CarRecord): Promise<number> {
  const began = performance.now()
  for (let count = 1; count <= COMMANDS / 2; count += 1) {
    const { number } = await record.commit(addFinding(`Filler under the swage line, seen at place ${count}.`))
    await record.commit(amendFinding(number ?? 0, `Filler under the swage line, 140 mm long, at place ${count}.`))
  }
  await record.close()
  return (COMMANDS * 1000) / (performance.now() - began)
}

const literal = (value: unknown) => (typeof value === 'string' ? `'${value.replaceAll("'", "''")}'` : String(value))

/** The very statements those commands ran, with their values written in, each command a transaction. */
async function statementsOf(path: string): Promise<string> {
  const connection = await Connection.open(path, 'read')
  const texts: string[] = []
  for await (const row of everyRow(connection)) {
    const steps = stepsOf(row).map(([sql, ...values]) => {
      let next = 0
      return `${sql.replace(/\?/g, () => literal(values[next++]))};`
    })
    texts.push(['BEGIN IMMEDIATE;', ...steps, 'COMMIT;'].join('\n'))
  }
  await connection.close()
  return `PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA wal_autocheckpoint = 256; PRAGMA foreign_keys = ON;\n${texts.join('\n')}\n`
}

/** The `sqlite3` shell runs those statements on an empty record of the same form; answers commands per second. */
async function shell(path: string, statements: string): Promise<number> {
  await (await makeFile(path)).close()
  const began = performance.now()
  const running = spawn('sqlite3', ['-bail', path], { stdio: ['pipe', 'ignore', 'inherit'] })
  running.stdin.end(statements)
  const [code] = await once(running, 'exit')
  if (code !== 0) throw new Error('The sqlite3 shell could not run the statements.')
  return (COMMANDS * 1000) / (performance.now() - began)
}

const median = (values: readonly number[]) => values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0

/** Durable small commands per second, ours and the shell's by turns; the ratio is the median of the pairs'. */
export async function durableCommands() {
  const scratch = scratchFolder()
  const rates: [number, number][] = []
  try {
    for (let round = 0; round <= ROUNDS; round += 1) {
      const path = scratch.file(`ours-${round}.wmk`)
      const record = await createRecord(path, beginning)
      const own = await ours(record)
      const theirs = await shell(scratch.file(`shell-${round}.wmk`), await statementsOf(path))
      // The first pair warms up disk cache and compiler.
      if (round > 0) rates.push([own, theirs])
    }
  } finally {
    scratch.remove()
  }
  return [
    {
      what: 'durable small commands per second, against the sqlite3 shell running the same statements, synchronous FULL',
      ours: median(rates.map(([own]) => own)),
      reference: median(rates.map(([, theirs]) => theirs)),
      ratio: median(rates.map(([own, theirs]) => own / theirs)),
      aim: 'at least 0.6',
    },
  ]
}
