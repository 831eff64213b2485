import { Connection } from '../../../electron/record/connection.ts'
import { lastRow, seal } from '../../../electron/record/journal.ts'
import { journalled, stepsOf } from '../../../electron/record/journalled-changes.ts'
import { createRecord, openRecord } from '../../../electron/record/open-record.ts'
import { RecordImage } from '../../../electron/record/record-image.ts'
import { afterCommand } from '../../../electron/record/undo-stacks.ts'
import { AT, beginning, findingDraft, scratchFolder, WHO } from '../../record/sample-record.ts'

const JOURNAL_ROWS = 100_000
const FINDINGS = 3000
const ROUNDS = 9

/** A record of 100,000 journal rows and 3,000 findings, as long work leaves it, written without waiting for the disk. */
async function makeLongRecord(path: string): Promise<void> {
  await (await createRecord(path, beginning)).close()
  const connection = await Connection.open(path, 'write')
  await connection.pragma('synchronous = OFF')
  let image = await RecordImage.read(connection)
  let head = await lastRow(connection)
  if (!head) throw new Error('The record has no first row.')
  await connection.run('BEGIN')
  for (let row = 2; row <= JOURNAL_ROWS; row += 1) {
    const number = ((row - 2) % FINDINGS) + 1
    const after = { ...findingDraft, number, note: `Looked at again, ${row}.` }
    const changes = journalled(image, [{ register: 'findings', key: String(number), after }])
    const said = { number: row, commandId: `row-${row}`, at: AT, who: WHO, command: 'finding.amend', input: { number } }
    const rest = { label: `Finding F ${number} amended`, given: null, undoes: null }
    const taken = row - 1 <= FINDINGS ? { findings: number } : {}
    head = seal({ ...said, ...rest, changes, taken, ...afterCommand(head.content, row, true) }, head.hash)
    image = image.with(head.content.changes)
    for (const [sql, ...values] of stepsOf(head)) await connection.run(sql, ...values)
  }
  await connection.run('COMMIT')
  await connection.close()
}

const median = (values: readonly number[]) => values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0

/** Milliseconds from asking to open to the first view, to write; median of rounds, the file in the disk cache. */
export async function openingOfLongRecord() {
  const scratch = scratchFolder()
  const path = scratch.file('long.wmk')
  const times: number[] = []
  try {
    await makeLongRecord(path)
    for (let round = 0; round < ROUNDS; round += 1) {
      const began = performance.now()
      const record = await openRecord(path, { readOnly: false })
      if (record.view().findings.length !== FINDINGS) throw new Error('The long record did not open whole.')
      times.push(performance.now() - began)
      if (round === 0 && !(await record.verify()).sound) throw new Error('The long record does not verify.')
      await record.close()
    }
  } finally {
    scratch.remove()
  }
  return [
    {
      what: `opening a record of ${JOURNAL_ROWS} journal rows and ${FINDINGS} findings to its first view, milliseconds`,
      ours: median(times),
      reference: null,
      ratio: null,
      aim: 'under 300',
    },
  ]
}
