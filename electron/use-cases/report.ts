import { createReadStream, createWriteStream, existsSync } from 'node:fs'
import { mkdir, readdir, rename, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'
import type { Readable } from 'node:stream'
import type { Edition, Paper } from '../../shared-types/edition.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { CarRecord } from '../record/car-record.ts'
import { composeReport } from '../report/compose-report.ts'
import { missingLines } from '../report/editions/readiness.ts'
import { changesSinceEdition, recordContent } from '../report/editions/record-content.ts'
import type { EditionData } from '../report/report-content.ts'
import { coatingCar } from './coating-car.ts'
import { coatingChangesOf } from './coating-change.ts'
import { coatingCutsOf } from './coating-cut.ts'
import { coatingMapsOf } from './coating-map.ts'
import { identityOf, shelfOf } from './identity-view.ts'
import { judge } from './judgement.ts'
import { numberFormatOf } from './number-format.ts'
import { partsJudged } from './part-expectation.ts'
import { keptPictures } from './pictures-kept.ts'
import type { Program, UseCases } from './program.ts'
import { keptSamples } from './sample-taken.ts'
import { keptTapes } from './tape/measuring.ts'
import { timeLineOf } from './time-line.ts'

/** Previews that stay in the scratch folder: those that windows may still draw pages of. */
const PREVIEWS_KEPT = 4

/** Composes into the scratch folder under the hash of what came out. Throws `cancelled` when it is stopped before. */
async function composeInto(
  program: Program,
  record: CarRecord,
  edition: EditionData,
  paper: Paper,
  stop?: AbortSignal,
): Promise<{ readonly path: string; readonly pages: number; readonly byteLength: number; readonly sha256: string }> {
  await mkdir(program.scratchFolder, { recursive: true })
  const unfinished = join(program.scratchFolder, `report-${crypto.randomUUID()}.unfinished`)
  const computed = await computedOf(program, record)
  const output = createWriteStream(unfinished, { mode: 0o600 })
  try {
    const written = await composeReport(recordContent(record, computed, edition, paper), output, stop)
    const path = documentPath(program, written.sha256)
    await rename(unfinished, path)
    return { path, ...written }
  } catch (error) {
    output.destroy()
    await rm(unfinished, { force: true })
    if (stop?.aborted === true) throw new ProblemError('cancelled', 'The preview was stopped before its last page.')
    throw error
  }
}

/** Throws away previews that newer ones have taken the place of. */
async function thinPreviews(program: Program): Promise<void> {
  const names = (await readdir(program.scratchFolder)).filter((name) => /^report-[0-9a-f]{64}\.pdf$/.test(name))
  const made = await Promise.all(
    names.map(async (name) => {
      const path = join(program.scratchFolder, name)
      // One that an edition was put away from may be gone already.
      return { path, at: (await stat(path).catch(() => null))?.mtimeMs ?? 0 }
    }),
  )
  const old = made.toSorted((one, other) => other.at - one.at).slice(PREVIEWS_KEPT)
  await Promise.all(old.map(({ path }) => rm(path, { force: true })))
}

/** What the report prints of what is computed from the record. */
async function computedOf(program: Program, record: CarRecord) {
  const view = record.view()
  const sheeted = view.sheets.length > 0
  const [identity, judged, coatingMaps, coatingChanges, measurements, photographMeasures] = await Promise.all([
    sheeted ? identityOf(record, { more: true, shelf: shelfOf(program) }) : null,
    sheeted ? partsJudged(record, shelfOf(program)) : null,
    coatingMapsOf(view),
    coatingChangesOf(view),
    keptTapes(record),
    keptPictures(record),
  ])
  const timeLine = await timeLineOf(record, identity)
  const coatingCuts = await coatingCutsOf(view, coatingMaps)
  const coating = { coatingMaps, coatingCuts, coatingChanges, coatingCar: coatingCar(view) }
  return {
    judgement: judge(view),
    identity,
    numberFormat: numberFormatOf(view),
    timeLine,
    partsJudged: judged,
    measurements,
    photographMeasures,
    samples: keptSamples(view),
    ...coating,
  }
}

const documentPath = (program: Program, id: string): string => join(program.scratchFolder, `report-${id}.pdf`)

/** Path of a previewed report by the id that `report.preview` answered; throws `not-found`. */
export function previewDocument(program: Program, id: string): string {
  const path = /^[0-9a-f]{64}$/.test(id) ? documentPath(program, id) : null
  if (path === null || !existsSync(path)) {
    throw new ProblemError('not-found', 'This preview is no longer there. Make the preview again.')
  }
  return path
}

/** The bytes of an issued edition; throws `not-found`. */
export function editionDocument(program: Program, number: number): Readable {
  const record = program.record()
  const edition = record.view().editions.find((candidate) => candidate.number === number)
  if (edition === undefined) {
    throw new ProblemError(
      'not-found',
      `There is no edition ${number} of this report. Choose one from the list of editions.`,
    )
  }
  return record.bytes.read(edition.sha256)
}

export const reportUseCases: Pick<UseCases, 'report.preview' | 'edition.issue' | 'report.readiness'> = {
  'report.preview': async (program, { paper, taskId }) => {
    const record = program.record()
    const stop = taskId === undefined ? undefined : program.task(taskId)
    const { commission, editions } = record.view()
    const previous = editions.at(-1) ?? null
    const edition: EditionData = {
      number: null,
      reportNumber: commission.recordNumber,
      issuedAt: program.now(),
      reason: '',
      previous,
      changes: await changesSinceEdition(record, previous),
    }
    try {
      const { sha256, pages, byteLength } = await composeInto(program, record, edition, paper, stop)
      await thinPreviews(program)
      return { document: sha256, pages, byteLength }
    } finally {
      if (taskId !== undefined) program.tell({ event: 'task.ended', taskId })
    }
  },

  'edition.issue': async (program, { commandId, paper, reason }) => {
    const record = program.record()
    const view = record.view()
    const issuedAt = program.now()
    const previous = view.editions.at(-1) ?? null
    const number = (previous?.number ?? 0) + 1
    const reportNumber = `${view.commission.recordNumber}-${number}`
    const data: EditionData = {
      number,
      reportNumber,
      issuedAt,
      reason,
      previous,
      changes: await changesSinceEdition(record, previous),
    }
    const { path, pages, byteLength, sha256 } = await composeInto(program, record, data, paper)
    try {
      await record.bytes.put(createReadStream(path))
      const edition: Edition = {
        number,
        reportNumber,
        issuedAt,
        paper,
        reason,
        sha256,
        byteLength,
        pages,
        journalNumber: view.journalNumber,
        journalHash: view.journalHash,
      }
      return await record.commit({
        commandId,
        name: 'edition.issue',
        who: view.commission.examiner,
        at: issuedAt,
        input: { paper, reason },
        decide: ({ now }) => {
          if (now.editions.length !== view.editions.length) {
            throw new ProblemError(
              'not-allowed-here',
              'Another edition was issued in the meantime. Look at it, then issue again if it is still needed.',
            )
          }
          return {
            changes: [{ register: 'editions', key: String(number), after: edition }],
            label: `Edition ${number} issued: ${reportNumber}`,
            number,
            undoable: false,
          }
        },
      })
    } finally {
      await rm(path, { force: true })
    }
  },

  'report.readiness': async (program) => missingLines(program.record().view()),
}
