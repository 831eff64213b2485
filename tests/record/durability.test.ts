import { createHash } from 'node:crypto'
import { rmSync } from 'node:fs'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { rebuildRecord } from '../../electron/record/rebuild.ts'
import type { JournalEntry } from '../../shared-types/record.ts'
import { beginning, scratchFolder } from './sample-record.ts'
import { bundleSurveyChild, type ChildMode, startChild } from './second-process.ts'
import { dumpTables } from './table-dump.ts'

/** How often a surveying program is killed; set WITNESSMARK_KILLS for a longer run. */
const KILLS = Number(process.env.WITNESSMARK_KILLS ?? 200)
const SIDE_BY_SIDE = 2
/** A record is killed this often before a fresh one is begun: checking one rebuilds it wholly. */
const KILLS_A_RECORD = 10

let scratch: ReturnType<typeof scratchFolder>
beforeAll(bundleSurveyChild)
beforeEach(() => {
  scratch = scratchFolder()
})
afterEach(() => scratch.remove())

interface Acknowledged {
  readonly number: number
  readonly hash?: string
}

/** Lets a child survey the record and kills it: mostly some moments into its work, now and then while it opens. */
async function surveyAndKill(mode: ChildMode, path: string): Promise<readonly Acknowledged[]> {
  const { child, lines, first, ended } = startChild(mode, path)
  if (Math.random() < 0.15) await pause(100 + Math.random() * 150)
  else {
    await first
    await pause(Math.random() * 60)
  }
  child.kill('SIGKILL')
  await ended
  return lines.filter((line) => 'number' in line) as unknown as readonly Acknowledged[]
}
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** What is wrong with a record after a kill, in words; empty when nothing is. */
async function faultsAfter(path: string, acknowledged: readonly Acknowledged[]): Promise<readonly string[]> {
  const faults: string[] = []
  const record = await openRecord(path, { readOnly: false })
  const entries: JournalEntry[] = []
  for (let before: number | null = null; ; before = entries.at(-1)?.number ?? null) {
    const page = await record.journal(before, 500)
    entries.push(...page.entries)
    if (!page.more) break
  }
  const byNumber = new Map(entries.map((entry) => [entry.number, entry.hash]))
  for (const { number, hash } of acknowledged) {
    const kept = byNumber.get(number)
    if (kept === undefined) faults.push(`row ${number} was acknowledged and is lost`)
    else if (hash !== undefined && hash !== kept) faults.push(`row ${number} is not the one that was acknowledged`)
  }
  const verified = await record.verify()
  if (!verified.sound) faults.push(`the journal breaks at row ${verified.firstBad}`)
  const view = record.view()
  for (const { photograph } of view.exhibits) {
    if (!photograph) continue
    const hash = createHash('sha256')
    for await (const chunk of record.bytes.read(photograph.sha256)) hash.update(chunk as Uint8Array)
    if (hash.digest('hex') !== photograph.sha256) faults.push(`photograph ${photograph.sha256} is not whole`)
  }
  await record.close()
  await rebuildRecord(path, `${path}.rebuilt`)
  const [tables, rebuilt] = [await dumpTables(path), await dumpTables(`${path}.rebuilt`)]
  for (const [table, rows] of Object.entries(tables)) {
    if (JSON.stringify(rows) !== JSON.stringify(rebuilt[table])) faults.push(`${table} is not what the journal says`)
  }
  rmSync(`${path}.rebuilt`)
  return faults
}

async function killRepeatedly(mode: ChildMode, path: string, kills: number) {
  const faults: string[] = []
  let acknowledged = 0
  await (await createRecord(path, beginning)).close()
  for (let count = 0; count < kills; count += 1) {
    const told = await surveyAndKill(mode, path)
    acknowledged += told.length
    faults.push(...(await faultsAfter(path, told)))
  }
  rmSync(path)
  return { acknowledged, faults }
}

describe('a program killed in the middle of a survey', () => {
  it(
    `loses nothing it acknowledged and leaves no half change, ${KILLS} times at random moments`,
    async () => {
      const records = Array.from({ length: Math.ceil(KILLS / KILLS_A_RECORD) }, (_, index) => index)
      let acknowledged = 0
      const line = async () => {
        for (let index = records.pop(); index !== undefined; index = records.pop()) {
          const kills = Math.min(KILLS_A_RECORD, KILLS - index * KILLS_A_RECORD)
          const result = await killRepeatedly('survey', scratch.file(`survey-${index}.wmk`), kills)
          acknowledged += result.acknowledged
          expect(result.faults).toEqual([])
        }
      }
      await Promise.all(Array.from({ length: SIDE_BY_SIDE }, line))
      // Guards against a survey that never got going: then nothing could have been lost.
      expect(acknowledged).toBeGreaterThan(KILLS)
    },
    KILLS * 3000,
  )

  it('would be found out if it acknowledged before it committed: the same check then reports loss', async () => {
    const faults: string[] = []
    for (let attempt = 0; attempt < 5 && faults.length === 0; attempt += 1) {
      faults.push(...(await killRepeatedly('early', scratch.file(`early-${attempt}.wmk`), KILLS_A_RECORD)).faults)
    }
    expect(faults.filter((fault) => fault.endsWith('was acknowledged and is lost')).length).toBeGreaterThan(0)
  }, 120_000)
})
