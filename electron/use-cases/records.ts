import { realpathSync } from 'node:fs'
import { mkdir } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { createRecord, openRecord } from '../record/open-record.ts'
import { checkParticulars, checkVisit } from './identity.ts'
import { knownRecords, noteRecord } from './known-records.ts'
import type { Program, UseCases } from './program.ts'

/** Ending of the name of a car record. */
const ENDING = '.wmk'

/** Beginning, opening, closing and copying records; their journal. */
export const recordUseCases: Pick<
  UseCases,
  | 'records.list'
  | 'records.create'
  | 'records.open'
  | 'records.close'
  | 'record.view'
  | 'record.verify'
  | 'record.backup'
  | 'record.journal'
  | 'journal.undo'
  | 'journal.redo'
> = {
  'records.list': (program) => knownRecords(program.recordsFolder),
  'records.create': async (program, { fileName, particulars, commission, visit }) => {
    checkParticulars(particulars, commission)
    checkVisit(visit, 'visit.endedAt')
    await mkdir(program.recordsFolder, { recursive: true })
    const path = join(program.recordsFolder, fileName.endsWith(ENDING) ? fileName : `${fileName}${ENDING}`)
    const [commandId, at] = [program.newCommandId(), program.now()]
    const first = { commandId, particulars, commission, visit, who: commission.examiner, at }
    await program.hold(await createRecord(path, first))
    return shown(program)
  },
  'records.open': async (program, { path, readOnly }) => {
    // Opened again in another way, a record gives its file back first; any other stays in hand should this one be refused.
    if (isHeld(program, path)) await program.hold(null)
    await program.hold(await openRecord(path, { readOnly }))
    return shown(program)
  },
  'records.close': async (program) => {
    await program.hold(null)
    return null
  },
  'record.view': async (program) => program.record().view(),
  'record.verify': (program) => program.record().verify(),
  'record.backup': async (program) => {
    const { path } = program.record()
    const time = program.now().slice(0, 19).replaceAll(':', '-')
    const target = join(dirname(path), `${basename(path, ENDING)} copy of ${time}${ENDING}`)
    await program.record().backup(target)
    return { path: target }
  },
  'record.journal': (program, { before, limit }) => program.record().journal(before, limit),
  'journal.undo': (program, { commandId }) => program.record().undo(sender(program, commandId)),
  'journal.redo': (program, { commandId }) => program.record().redo(sender(program, commandId)),
}

function isHeld(program: Program, path: string): boolean {
  try {
    return program.record().path === realpathSync(path)
  } catch {
    return false
  }
}

const sender = (program: Program, commandId: string) => ({
  commandId,
  who: program.record().view().commission.examiner,
  at: program.now(),
})

async function shown(program: Program) {
  const view = program.record().view()
  await noteRecord(program.recordsFolder, view, program.now())
  return view
}
