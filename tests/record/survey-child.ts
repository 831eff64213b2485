// A program of its own, for tests that need a second process: surveys at random until it is killed, holds a record open,
// or tries to open one. What it prints goes out at once and in order.
import { createHash, randomUUID } from 'node:crypto'
import { writeSync } from 'node:fs'
import { Readable } from 'node:stream'
import type { CarRecord } from '../../electron/record/car-record.ts'
import { openRecord } from '../../electron/record/open-record.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { AT, addFinding, amendFinding, command, sender, withdrawFinding } from './sample-record.ts'

const say = (line: unknown) => writeSync(1, `${JSON.stringify(line)}\n`)

/** A photograph of 2.5 MB whose bytes follow from its name, with the exhibit that cites it. */
async function addPhotograph(record: CarRecord): Promise<void> {
  const bytes = Buffer.alloc(2_500_000, createHash('sha256').update(randomUUID()).digest())
  const { sha256, byteLength } = await record.bytes.put(Readable.from([bytes]))
  await record.commit(
    command('exhibit.photograph', { sha256 }, ({ take }) => {
      const number = take('exhibits')
      const photograph = {
        sha256,
        byteLength,
        fileName: 'left.jpg',
        mediaType: 'image/jpeg' as const,
        widthPx: 4,
        heightPx: 3,
        orientation: 1,
        takenAt: null,
        takenOffset: null,
        camera: '',
        focalLengthMm: null,
        latitude: null,
        longitude: null,
      }
      const words = { caption: '', madeBy: '', place: '', panelId: null, view: null, at: null, inReport: true }
      const after = {
        ...words,
        number,
        kind: 'photograph' as const,
        photograph,
        measurement: null,
        picked: null,
        addedAt: AT,
      }
      return { changes: [{ register: 'exhibits', key: String(number), after }], number }
    }),
  )
}

/** One act of the survey, chosen at random among those that apply. */
async function act(record: CarRecord): Promise<void> {
  const { findings, undoState } = record.view()
  const found = findings[Math.floor(Math.random() * findings.length)]
  const chance = Math.random()
  if (chance < 0.02) await addPhotograph(record)
  else if (chance < 0.15 && undoState.undo !== null) await record.undo(sender())
  else if (chance < 0.25 && undoState.redo !== null) await record.redo(sender())
  else if (chance < 0.5 && found) await record.commit(amendFinding(found.number, randomUUID()))
  else if (chance < 0.6 && found) await record.commit(withdrawFinding(found.number))
  else await record.commit(addFinding(randomUUID()))
}

/** `early` acknowledges before the commit: the fault the durability test must be able to see. */
async function survey(record: CarRecord, early: boolean): Promise<never> {
  say({ ready: record.view().journalNumber })
  for (;;) {
    if (early) {
      const number = record.view().journalNumber + 1
      say({ number })
      await record.commit(addFinding(randomUUID()))
    } else {
      await act(record)
      const { journalNumber, journalHash } = record.view()
      say({ number: journalNumber, hash: journalHash })
    }
  }
}

const [mode = '', path = ''] = process.argv.slice(2)
try {
  const record = await openRecord(path, { readOnly: mode === 'read' })
  if (mode === 'survey' || mode === 'early') await survey(record, mode === 'early')
  if (mode === 'hold') {
    say({ pid: process.pid })
    setInterval(() => undefined, 1000)
  } else {
    say({ opened: record.view().journalNumber })
    await record.close()
  }
} catch (fault) {
  say(fault instanceof ProblemError ? fault.problem : { code: String(fault) })
}
