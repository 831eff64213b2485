import { randomUUID } from 'node:crypto'
import { createWriteStream } from 'node:fs'
import { mkdir, rm } from 'node:fs/promises'
import { basename, join } from 'node:path'
import type { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import type { ProgramEvent } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement } from '../../shared-types/record.ts'
import type { CarRecord } from '../record/car-record.ts'
import { noteRecord } from './known-records.ts'
import type { Program } from './program.ts'

export interface ProgramSetting {
  readonly recordsFolder: string
  readonly scratchFolder: string
  /** Clock, UTC with milliseconds; the machine's when left out. */
  readonly now?: () => string
  /** Ids of commands the program sends itself; random ones when left out. */
  readonly newCommandId?: () => string
  readonly tell: (event: ProgramEvent) => void
}

/** A program that runs: what the use cases reach, and what its doors hand in. */
export interface RunningProgram extends Program {
  /** Takes the bytes of a file from a door; the id serves once as a photograph source. Throws when the stream breaks off. */
  acceptUpload(fileName: string, bytes: Readable): Promise<string>
  /** Closes the open record and throws away what was handed in and not used. */
  end(): Promise<void>
}

/** Starts a program with no record open. */
export function startProgram(setting: ProgramSetting): RunningProgram {
  const { recordsFolder, scratchFolder } = setting
  const now = setting.now ?? (() => new Date().toISOString())
  const newCommandId = setting.newCommandId ?? randomUUID
  const uploads = new Map<string, { readonly path: string; readonly fileName: string }>()
  const tasks = new Map<string, AbortController>()
  const uploadFolder = join(scratchFolder, `uploads-${process.pid}-${randomUUID()}`)
  let held: CarRecord | null = null
  const tell = (event: ProgramEvent) => {
    if (event.event === 'task.ended') tasks.delete(event.taskId)
    setting.tell(event)
  }

  const letGo = async () => {
    if (held === null) return
    const leaving = held
    for (const controller of tasks.values()) controller.abort()
    tasks.clear()
    if (!leaving.readOnly) await noteRecord(recordsFolder, leaving.view(), now())
    held = null
    await leaving.close()
    tell({ event: 'record.closed' })
  }

  return {
    recordsFolder,
    scratchFolder,
    now,
    newCommandId: () => newCommandId(),
    tell,
    record: () => {
      if (held === null) {
        throw new ProblemError('no-record-open', 'No car record is open. Open one, or begin a new one, under Records.')
      }
      return held
    },
    hold: async (record) => {
      await letGo()
      held = record === null ? null : tellingOf(record, tell)
    },
    acceptUpload: async (fileName, bytes) => {
      await mkdir(uploadFolder, { recursive: true, mode: 0o700 })
      const id = randomUUID()
      const path = join(uploadFolder, id)
      try {
        await pipeline(bytes, createWriteStream(path, { mode: 0o600, flags: 'wx' }))
      } catch (cause) {
        await rm(path, { force: true })
        throw cause
      }
      uploads.set(id, { path, fileName: basename(fileName.replaceAll('\\', '/')).slice(0, 400) })
      return id
    },
    upload: async (id) => {
      const found = uploads.get(id)
      if (found === undefined) {
        throw new ProblemError('not-found', 'This file was handed in before, or not at all. Hand it in again.')
      }
      uploads.delete(id)
      return found
    },
    task: (taskId) => {
      const controller = tasks.get(taskId) ?? new AbortController()
      tasks.set(taskId, controller)
      return controller.signal
    },
    cancelTask: (taskId) => {
      tasks.get(taskId)?.abort()
      tasks.delete(taskId)
    },
    end: async () => {
      await letGo()
      await rm(uploadFolder, { recursive: true, force: true })
    },
  }
}

/** The record, telling every window of each change once it is durable. */
function tellingOf(record: CarRecord, tell: (event: ProgramEvent) => void): CarRecord {
  const told = (acknowledgement: Acknowledgement) => {
    tell({ event: 'record.changed', acknowledgement })
    return acknowledgement
  }
  return {
    path: record.path,
    readOnly: record.readOnly,
    bytes: record.bytes,
    view: () => record.view(),
    commit: async (command) => told(await record.commit(command)),
    undo: async (command) => told(await record.undo(command)),
    redo: async (command) => told(await record.redo(command)),
    journal: (before, limit) => record.journal(before, limit),
    verify: () => record.verify(),
    backup: (target) => record.backup(target),
    close: () => record.close(),
  }
}
