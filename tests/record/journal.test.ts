import { createHash } from 'node:crypto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CarRecord } from '../../electron/record/car-record.ts'
import { Connection } from '../../electron/record/connection.ts'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { addFinding, amendFinding, beginning, scratchFolder, sender, withdrawFinding } from './sample-record.ts'

let scratch: ReturnType<typeof scratchFolder>
let record: CarRecord
beforeEach(async () => {
  scratch = scratchFolder()
  record = await createRecord(scratch.file('sedge.wmk'), beginning)
  await record.commit(addFinding('one'))
  await record.commit(addFinding('two'))
  await record.commit(amendFinding(1, 'one, looked at again'))
  await record.undo(sender())
  await record.commit(withdrawFinding(2))
})
afterEach(async () => {
  await record.close()
  scratch.remove()
})

/** Alters the file behind the program's back. */
async function tamper(sql: string): Promise<void> {
  const connection = await Connection.open(scratch.file('sedge.wmk'), 'write')
  await connection.pragma('ignore_check_constraints = ON')
  await connection.script(sql)
  await connection.close()
}
const rehash = async (number: number, content: string) => {
  const connection = await Connection.open(scratch.file('sedge.wmk'), 'write')
  const row = await connection.get('SELECT previous_hash FROM journal WHERE number = ?', number)
  const hash = createHash('sha256').update(`${row?.previous_hash}${content}`).digest('hex')
  await connection.run('UPDATE journal SET content = ?, hash = ? WHERE number = ?', content, hash, number)
  await connection.close()
}

describe('the journal', () => {
  it('hashes each row over the hash before it and the row’s canonical text, as any SHA-256 tool can do again', async () => {
    const connection = await Connection.open(scratch.file('sedge.wmk'), 'read')
    let previous = '0'.repeat(64)
    for (const row of await connection.all('SELECT content, previous_hash, hash FROM journal ORDER BY number')) {
      expect(row.previous_hash).toBe(previous)
      previous = createHash('sha256').update(`${previous}${row.content}`, 'utf8').digest('hex')
      expect(row.hash).toBe(previous)
    }
    await connection.close()
    expect(record.view().journalHash).toBe(previous)
    expect(await record.verify()).toEqual({ rows: 6, sound: true, firstBad: null })
  })

  it('begins with the making of the record, so that it holds everything', async () => {
    const { entries } = await record.journal(2, 5)
    expect(entries.map(({ command, changes }) => [command, changes.map(({ register }) => register)])).toEqual([
      ['records.create', ['particulars', 'commission', 'visits']],
    ])
  })

  it('is read newest first, a page at a time, and says in words what was done, undone and done again', async () => {
    await record.undo(sender())
    await record.redo(sender())
    const first = await record.journal(null, 3)
    expect(first.entries.map(({ label, undoes }) => [label, undoes])).toEqual([
      ['Done again: Finding F 2 withdrawn', 7],
      ['Undone: Finding F 2 withdrawn', 6],
      ['Finding F 2 withdrawn', null],
    ])
    expect(first.more).toBe(true)
    const second = await record.journal(first.entries.at(-1)?.number ?? null, 5)
    expect(second.entries.map(({ number }) => number)).toEqual([5, 4, 3, 2, 1])
    expect(second.more).toBe(false)
    expect(second.entries[1]?.changes[0]).toMatchObject({
      before: { note: 'one' },
      after: { note: 'one, looked at again' },
    })
  })

  it.each([
    ['a changed letter', `UPDATE journal SET content = replace(content, 'two', 'tvo') WHERE number = 3`, 3],
    ['a changed hash', `UPDATE journal SET hash = replace(hash, substr(hash, 1, 1), 'g') WHERE number = 4`, 4],
    ['a row taken out of the middle', 'DELETE FROM journal WHERE number = 3', 3],
    ['the last row taken away', 'DELETE FROM journal WHERE number = 6', 6],
  ])('shows %s at the row where it happened', async (_, sql, firstBad) => {
    await tamper(sql)
    expect(await record.verify()).toMatchObject({ sound: false, firstBad })
  })

  it('shows a row that was altered and given a fitting hash, by the row behind it', async () => {
    const connection = await Connection.open(scratch.file('sedge.wmk'), 'read')
    const content = String((await connection.get('SELECT content FROM journal WHERE number = 3'))?.content)
    await connection.close()
    await rehash(3, content.replace('two', 'tvo'))
    expect(await record.verify()).toMatchObject({ sound: false, firstBad: 4 })
  })

  it('shows an altered last row when the record is next opened', async () => {
    await record.close()
    await tamper(`UPDATE journal SET content = replace(content, 'withdrawn', 'withdrewn') WHERE number = 6`)
    await expect(openRecord(scratch.file('sedge.wmk'), { readOnly: false })).rejects.toMatchObject({
      problem: { code: 'record-damaged' },
    })
  })
})
