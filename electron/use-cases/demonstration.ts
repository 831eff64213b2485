import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import { mkdir, mkdtemp, rename, rm } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { RequestInput, RequestName } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { claimUseCases } from './claims.ts'
import { coatingUseCases } from './coating.ts'
import { correctionUseCases } from './corrections.ts'
import { type DemonstrationStep, readDemonstration } from './demonstration-record.ts'
import { exhibitUseCases } from './exhibits.ts'
import { findingUseCases } from './findings.ts'
import { identityUseCases } from './identity.ts'
import { observationUseCases } from './observations.ts'
import { partUseCases } from './parts.ts'
import { photographUseCases } from './photographs.ts'
import { pictureMeasureUseCases } from './picture-measures.ts'
import type { Program, UseCase, UseCases } from './program.ts'
import { recordUseCases } from './records.ts'
import { referenceSheetUseCases } from './reference-sheets.ts'
import { startProgram } from './running-program.ts'
import { walkRoundUseCases } from './walk-round.ts'

/** What a survey asks for. The demonstration goes in by the same use cases as anybody's record. */
const survey: Partial<UseCases> = {
  ...identityUseCases,
  ...walkRoundUseCases,
  ...findingUseCases,
  ...coatingUseCases,
  ...exhibitUseCases,
  ...photographUseCases,
  ...pictureMeasureUseCases,
  ...partUseCases,
  ...claimUseCases,
  ...correctionUseCases,
  ...referenceSheetUseCases,
  ...observationUseCases,
}

async function take(program: Program, step: DemonstrationStep): Promise<void> {
  const act = survey[step.request] as UseCase<RequestName> | undefined
  if (act === undefined) throw new Error(`A survey does not ask for ${step.request}.`)
  const said: unknown = await act(program, step.input as RequestInput<RequestName>)
  const refused = (said as { refused?: readonly { problem: { message: string } }[] } | null)?.refused?.[0]
  if (refused !== undefined)
    throw new Error(`A photograph of the demonstration was refused: ${refused.problem.message}`)
}

/**
 * Ids of the commands the program sends while it makes the demonstration, the same each time, so that the record has the
 * same journal on every machine: version 8 of RFC 9562, from a hash of their place in the row.
 */
function commandIds(): () => string {
  let sent = 0
  return () => {
    sent += 1
    const hash = createHash('sha256').update(`demonstration ${sent}`).digest('hex')
    return [
      hash.slice(0, 8),
      hash.slice(8, 12),
      `8${hash.slice(13, 16)}`,
      `8${hash.slice(17, 20)}`,
      hash.slice(20, 32),
    ].join('-')
  }
}

/** Makes the demonstration record at `path` as a file, and leaves open what is open. */
async function writeDemonstration(program: Program, path: string): Promise<void> {
  if (existsSync(path)) {
    throw new ProblemError('record-exists', `There is already a record at ${path}. Open it, or move it away first.`)
  }
  const { made, create, steps } = readDemonstration()
  await mkdir(dirname(path), { recursive: true })
  const making = await mkdtemp(join(dirname(path), '.making-'))
  let now = made
  const maker = startProgram({
    recordsFolder: making,
    scratchFolder: program.scratchFolder,
    now: () => now,
    newCommandId: commandIds(),
    tell: () => undefined,
  })
  try {
    const begun = await recordUseCases['records.create'](maker, { ...create, fileName: basename(path) })
    for (const step of steps) {
      now = step.at
      await take(maker, step)
    }
    await maker.end()
    await rename(begun.path, path)
  } finally {
    await maker.end()
    await rm(making, { recursive: true, force: true })
  }
}

/**
 * Makes the demonstration record at `path` by replaying its survey at the times it was done, and opens it.
 * It is made in a folder of its own and moved when it is whole. Throws `record-exists` and leaves an existing file alone.
 */
export async function makeDemonstration(program: Program, path: string): Promise<void> {
  await writeDemonstration(program, path)
  await recordUseCases['records.open'](program, { path, readOnly: false })
}

/** Demonstrations that are being made, by their path: who asks again meanwhile waits for the same one. */
const beingMade = new Map<string, Promise<void>>()

/** Path of the demonstration car among the records; made when it is not there yet, which takes seconds. */
async function demonstrationAmong(program: Program): Promise<string> {
  const path = join(program.recordsFolder, 'demonstration.wmk')
  if (existsSync(path)) return path
  const made = beingMade.get(path) ?? writeDemonstration(program, path).finally(() => beingMade.delete(path))
  beingMade.set(path, made)
  await made
  return path
}

/** The demonstration car among the records: made when it is not there yet; and opened. */
export const demonstrationUseCases: Pick<UseCases, 'records.makeDemonstration' | 'records.demonstration'> = {
  'records.makeDemonstration': async (program) => ({ path: await demonstrationAmong(program) }),
  'records.demonstration': async (program) =>
    recordUseCases['records.open'](program, { path: await demonstrationAmong(program), readOnly: false }),
}
