import { existsSync, readdirSync, writeFileSync } from 'node:fs'
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { createRecord, openRecord } from '../../electron/record/open-record.ts'
import { addFinding, beginning, scratchFolder } from './sample-record.ts'
import { bundleSurveyChild, startChild } from './second-process.ts'

let scratch: ReturnType<typeof scratchFolder>
let path: string
beforeAll(bundleSurveyChild)
beforeEach(async () => {
  scratch = scratchFolder()
  path = scratch.file('sedge.wmk')
  await (await createRecord(path, beginning)).close()
})
afterEach(() => scratch.remove())

const inUse = (words: RegExp) => ({ problem: { code: 'record-in-use', message: expect.stringMatching(words) } })

describe('one record and two who want it', () => {
  it('refuses the second writing process, naming program, process and since when, and lets it read', async () => {
    const { child, first, lines, ended } = startChild('hold', path)
    await first
    const pid = lines[0]?.pid
    await expect(openRecord(path, { readOnly: false })).rejects.toMatchObject(
      inUse(new RegExp(`Witnessmark \\(process ${pid} on .+\\) since \\d{4}-\\d\\d-\\d\\dT`)),
    )
    const reading = await openRecord(path, { readOnly: true })
    expect(reading.view().particulars).toEqual(beginning.particulars)
    await expect(reading.commit(addFinding('no'))).rejects.toMatchObject({ problem: { code: 'record-read-only' } })
    await reading.close()
    child.kill('SIGKILL')
    await ended
  })

  it('lets the owner in at once after the first process was killed, though its lock file lies there', async () => {
    const { child, first, ended } = startChild('hold', path)
    await first
    child.kill('SIGKILL')
    await ended
    expect(existsSync(`${path}-lock`)).toBe(true)
    const record = await openRecord(path, { readOnly: false })
    await record.commit(addFinding('after the crash'))
    await record.close()
    expect(readdirSync(scratch.folder)).toEqual(['sedge.wmk'])
  })

  it('is not locked out by a lock file that holds rubbish', async () => {
    writeFileSync(`${path}-lock`, 'rubbish'.repeat(1000))
    const record = await openRecord(path, { readOnly: false })
    await record.commit(addFinding('in'))
    await record.close()
  })

  it('refuses a second opening for writing in the same process, and the first goes on', async () => {
    const first = await openRecord(path, { readOnly: false })
    await expect(openRecord(path, { readOnly: false })).rejects.toMatchObject(inUse(/open in this program since/))
    const reading = await openRecord(path, { readOnly: true })
    await first.commit(addFinding('goes on'))
    await reading.close()
    const outside = startChild('write', path)
    await outside.ended
    expect(outside.lines[0]).toMatchObject({ code: 'record-in-use' })
    await first.close()
  })

  it('gives the record to exactly one of many who ask at the same time', async () => {
    const asked = await Promise.allSettled(Array.from({ length: 8 }, () => openRecord(path, { readOnly: false })))
    const got = asked.flatMap((answer) => (answer.status === 'fulfilled' ? [answer.value] : []))
    expect(got).toHaveLength(1)
    for (const record of got) await record.close()
  })

  it('leaves one file when the writer closes while a reader is in, and the reader after it', async () => {
    const writer = await openRecord(path, { readOnly: false })
    const reading = await openRecord(path, { readOnly: true })
    await writer.commit(addFinding('one'))
    expect((await reading.journal(null, 5)).entries[0]?.label).toBe('Finding F 1 added')
    await writer.close()
    await reading.close()
    await (await openRecord(path, { readOnly: false })).close()
    expect(readdirSync(scratch.folder)).toEqual(['sedge.wmk'])
  })
})
