import { createReadStream } from 'node:fs'
import { rm } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import type { RequestInput, RequestOutput } from '../../shared-types/contract.ts'
import type { Photograph } from '../../shared-types/exhibit.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement, RecordView } from '../../shared-types/record.ts'
import { PhotographDecoder } from '../exhibits/photograph-decoder.ts'
import {
  nameOfSource,
  type PhotographFile,
  type PhotographSource,
  photographFile,
  photographMark,
  refusedPhotograph,
} from '../exhibits/photograph-file.ts'
import type { PhotographSeen } from '../exhibits/photograph-work.ts'
import type { CarRecord } from '../record/car-record.ts'
import { checkExhibitPlace, photographTaken } from './exhibits.ts'
import type { Program, UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'
import { sendCommand } from './send-command.ts'

type Import = RequestInput<'exhibits.import'>

/** A photograph looked at and not yet in the record. */
interface Looked {
  readonly file: PhotographFile
  readonly mark: string
  readonly seen: PhotographSeen
}

/** Pictures decoded beside each other; one processor is left to the record and the window. */
const decoders = (): number => Math.max(1, Math.min(3, availableParallelism() - 1))

async function look(program: Program, source: PhotographSource, decoder: PhotographDecoder): Promise<Looked> {
  const file = await photographFile(source, (id) => program.upload(id))
  try {
    const mark = await photographMark(file)
    return { file, mark, seen: await decoder.look(file) }
  } catch (fault) {
    if (file.temporary) await rm(file.path, { force: true })
    throw fault
  }
}

function refuseKnown(now: RecordView, sha256: string, fileName: string): void {
  const known = now.exhibits.find((exhibit) => exhibit.photograph?.sha256 === sha256)
  if (known === undefined) return
  throw refusedPhotograph(fileName, `This photograph is already ${rowMark('exhibits', known.number)}.`)
}

async function take(
  program: Program,
  record: CarRecord,
  { file, mark, seen }: Looked,
  input: Import,
): Promise<Acknowledgement> {
  try {
    if ('refused' in seen) throw refusedPhotograph(file.fileName, seen.refused)
    const { sha256 } = await record.bytes.put(createReadStream(file.path))
    refuseKnown(record.view(), sha256, file.fileName)
    if ((await photographMark(file)) !== mark) {
      throw refusedPhotograph(file.fileName, 'The file changed while it was read. Choose it again.')
    }
    for (const kind of ['thumbnail', 'report'] as const) {
      await record.bytes.putRendering(sha256, kind, seen[kind].bytes, seen[kind])
    }
    // Another record may have been opened in the meantime; this photograph is not for that one.
    if (program.record() !== record) throw cancelled(file.fileName)
    return await addExhibit(program, { ...seen.photograph, sha256 }, input)
  } finally {
    if (file.temporary) await rm(file.path, { force: true })
  }
}

const addExhibit = (program: Program, photograph: Photograph, { panelId, view, madeBy }: Import) =>
  sendCommand(
    program,
    'exhibit.photograph',
    { commandId: program.newCommandId(), photograph, panelId, view, madeBy },
    (draft, at) => {
      refuseKnown(draft.now, photograph.sha256, photograph.fileName)
      return photographTaken({ photograph, panelId, view, madeBy }, draft, at)
    },
  )

const cancelled = (fileName: string): ProblemError =>
  new ProblemError('cancelled', `"${fileName}" was not taken in, because the import was stopped. Choose it again.`)

/**
 * Takes photographs in, in the order given, looking ahead while the one before goes into the record. What is refused
 * is named with its reason and the others go in; when the task is cancelled, what went in before stays.
 */
async function importPhotographs(program: Program, input: Import): Promise<RequestOutput<'exhibits.import'>> {
  const record = program.record()
  if (record.readOnly) {
    throw new ProblemError('record-read-only', 'This record was opened to read only. Open it for writing to add to it.')
  }
  checkExhibitPlace(input, record.view(), 'panelId')
  const { sources, taskId } = input
  const signal = program.task(taskId)
  const lanes = Array.from({ length: Math.min(decoders(), sources.length) }, () => new PhotographDecoder())
  const ahead = new Map<number, Promise<Looked>>()
  const begin = (at: number) => {
    const source = sources[at]
    const lane = lanes[at % lanes.length]
    if (source === undefined || lane === undefined || signal.aborted) return
    const looking = look(program, source, lane)
    looking.catch(() => undefined)
    ahead.set(at, looking)
  }
  const stop = () => {
    for (const lane of lanes) lane.end()
  }
  signal.addEventListener('abort', stop, { once: true })
  const taken: Acknowledgement[] = []
  const refused: { fileName: string; problem: ProblemError['problem'] }[] = []
  try {
    for (let at = 0; at < lanes.length; at++) begin(at)
    for (const [at, source] of sources.entries()) {
      let fileName = nameOfSource(source)
      try {
        const looking = ahead.get(at)
        ahead.delete(at)
        if (looking === undefined) throw cancelled(fileName)
        const looked = await looking
        fileName = looked.file.fileName
        begin(at + lanes.length)
        if (signal.aborted) throw cancelled(fileName)
        taken.push(await take(program, record, looked, input))
      } catch (fault) {
        if (!(fault instanceof ProblemError)) throw fault
        if (!ahead.has(at + lanes.length)) begin(at + lanes.length)
        refused.push({ fileName, problem: fault.problem })
      }
      program.tell({ event: 'task.progress', taskId, done: at + 1, all: sources.length, label: fileName })
    }
    return { taken, refused }
  } finally {
    signal.removeEventListener('abort', stop)
    stop()
    program.tell({ event: 'task.ended', taskId })
  }
}

/** Photographs into the record, and the end of a task that takes too long. */
export const photographUseCases: Pick<UseCases, 'exhibits.import' | 'task.cancel'> = {
  'exhibits.import': importPhotographs,
  'task.cancel': async (program, { taskId }) => {
    program.cancelTask(taskId)
    return null
  },
}
