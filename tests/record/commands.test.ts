import { randomUUID } from 'node:crypto'
import { readdirSync, statSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import type { Spot } from '../../shared-types/reading.ts'
import {
  AT,
  addFinding,
  amendFinding,
  beginning,
  command,
  scratchFolder,
  sender,
  withdrawFinding,
} from './sample-record.ts'

let scratch: ReturnType<typeof scratchFolder>
beforeEach(() => {
  scratch = scratchFolder()
})
afterEach(() => scratch.remove())

const begun = (name = 'sedge.wmk') => createRecord(scratch.file(name), beginning)

describe('a car record', () => {
  it('is one file of mode 0600 when closed, and its side files have that mode while it is open', async () => {
    const record = await begun()
    await record.commit(addFinding('one'))
    const open = readdirSync(scratch.folder).sort()
    expect(open).toEqual(['sedge.wmk', 'sedge.wmk-lock', 'sedge.wmk-shm', 'sedge.wmk-wal'])
    for (const name of open) expect([name, statSync(scratch.file(name)).mode & 0o777]).toEqual([name, 0o600])
    await record.close()
    expect(readdirSync(scratch.folder)).toEqual(['sedge.wmk'])
    expect(statSync(scratch.file('sedge.wmk')).mode & 0o777).toBe(0o600)
  })

  it('refuses to be made over an existing file and leaves that file alone', async () => {
    await (await begun()).close()
    const before = statSync(scratch.file('sedge.wmk'))
    await expect(begun()).rejects.toMatchObject({ problem: { code: 'record-exists' } })
    expect(statSync(scratch.file('sedge.wmk')).mtimeMs).toBe(before.mtimeMs)
  })

  it('shows the same rows after reopening as before closing, awkward text letter for letter', async () => {
    const record = await begun()
    const awkward = 'NUL \u0000, line\nbreak, “quotes”, \u202Eright-to-left\u202C, 🚗, <b>&amp;</b>, =1+1, \\u0000'
    await record.commit(addFinding(awkward))
    const view = record.view()
    expect(view.findings[0]?.note).toBe(awkward)
    await record.close()
    const again = await openRecord(scratch.file('sedge.wmk'), { readOnly: false })
    expect(again.view()).toEqual(view)
    expect(JSON.stringify(again.view())).toBe(JSON.stringify(view))
    await again.close()
  })

  it('takes numbers upwards and never gives one twice, also after withdrawing, undoing and reopening', async () => {
    let record = await begun()
    expect((await record.commit(addFinding('a'))).number).toBe(1)
    expect((await record.commit(addFinding('b'))).number).toBe(2)
    await record.commit(withdrawFinding(2))
    expect((await record.commit(addFinding('c'))).number).toBe(3)
    await record.undo(sender())
    await record.close()
    record = await openRecord(scratch.file('sedge.wmk'), { readOnly: false })
    expect((await record.commit(addFinding('d'))).number).toBe(4)
    expect(record.view().findings.map(({ number }) => number)).toEqual([1, 4])
    await record.close()
  })

  it('keeps rows in key order: numbers by size, not by their letters', async () => {
    const record = await begun()
    for (let count = 0; count < 12; count += 1) await record.commit(addFinding(String(count)))
    await record.commit(withdrawFinding(10))
    await record.undo(sender())
    expect(record.view().findings.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
    await record.close()
  })

  it('leaves the record as it was when a command is refused, and gives its number to the next', async () => {
    const record = await begun()
    const before = record.view()
    const refused = command('finding.add', {}, ({ take }) => {
      take('findings')
      throw new Error('no')
    })
    await expect(record.commit(refused)).rejects.toThrow('no')
    expect(record.view()).toBe(before)
    expect((await record.commit(addFinding('a'))).number).toBe(1)
    await record.close()
  })

  it('refuses a row its tables do not allow, wholly, and goes on afterwards', async () => {
    const record = await begun()
    const spot: Spot = {
      number: 1,
      panelId: 'bonnet',
      view: 'roof',
      at: null,
      where: '',
      values: [{ kind: 'value', um: 110 }],
      enteredIn: 'µm',
      gauge: 9,
      mode: 'magnetic',
      substrate: 'steel',
      readAt: AT,
      exhibits: [],
      note: 'read with a gauge that this record does not hold',
    }
    const wrong = command('spot.add', {}, () => ({ changes: [{ register: 'spots', key: '1', after: spot }] }))
    await expect(record.commit(wrong)).rejects.toMatchObject({ problem: { code: 'input-refused' } })
    expect(record.view().spots).toEqual([])
    await record.commit(addFinding('goes on'))
    expect(await record.verify()).toEqual({ rows: 2, sound: true, firstBad: null })
    await record.close()
  })

  it('refuses half of a surrogate pair, which no canonical JSON can hold', async () => {
    const record = await begun()
    await expect(record.commit(addFinding('\uD83D'))).rejects.toMatchObject({ problem: { code: 'input-refused' } })
    expect(record.view().journalNumber).toBe(1)
    await record.close()
  })

  it('answers a command sent again with its first acknowledgement, also after others and after reopening', async () => {
    let record = await begun()
    const id = randomUUID()
    const first = await record.commit(addFinding('once', id))
    await record.commit(amendFinding(1, 'later'))
    expect(await record.commit(addFinding('once', id))).toEqual(first)
    const undone = sender()
    const answer = await record.undo(undone)
    await record.close()
    record = await openRecord(scratch.file('sedge.wmk'), { readOnly: false })
    expect(await record.commit(addFinding('once', id))).toEqual(first)
    expect(await record.undo(undone)).toEqual(answer)
    expect(record.view().journalNumber).toBe(4)
    await record.close()
  })

  it('refuses the id of an earlier command with another input or another name', async () => {
    const record = await begun()
    const id = randomUUID()
    await record.commit(addFinding('once', id))
    const reused = { problem: { code: 'command-reused' } }
    await expect(record.commit(addFinding('other', id))).rejects.toMatchObject(reused)
    await expect(record.undo({ ...sender(), commandId: id })).rejects.toMatchObject(reused)
    expect(record.view().journalNumber).toBe(2)
    await record.close()
  })

  it('does commands sent at once one after the other', async () => {
    const record = await begun()
    const answers = await Promise.all(Array.from({ length: 30 }, (_, index) => record.commit(addFinding(`${index}`))))
    expect(answers.map(({ number }) => number)).toEqual(Array.from({ length: 30 }, (_, index) => index + 1))
    expect(answers.map(({ journalNumber }) => journalNumber)).toEqual(answers.map((_, index) => index + 2))
    await record.close()
  })

  it('finishes what was sent before closing and refuses what comes after', async () => {
    const record = await begun()
    const sent = record.commit(addFinding('in time'))
    const closed = record.close()
    await expect(record.commit(addFinding('late'))).rejects.toMatchObject({ problem: { code: 'no-record-open' } })
    expect((await sent).number).toBe(1)
    await closed
  })
})
