import { createReadStream } from 'node:fs'
import { Readable } from 'node:stream'
import type { ProgramEvent } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Program, UseCases } from '../use-cases/program.ts'
import { editionDocument, previewDocument } from '../use-cases/report.ts'
import { type RunningProgram, startProgram } from '../use-cases/running-program.ts'
import { answer } from './answer.ts'
import type { BehindTheDoor, PictureKind, Served } from './behind-the-door.ts'

const absent = (what: string) => new ProblemError('not-found', `${what} is not in this record. Reload the page.`)

async function exhibit(program: Program, number: number, kind: PictureKind): Promise<Served> {
  const record = program.record()
  const photograph = record.view().exhibits.find((one) => one.number === number)?.photograph
  if (!photograph) throw absent(`A picture of exhibit E ${number}`)
  if (kind === 'original') {
    const { sha256, mediaType, fileName } = photograph
    return { bytes: record.bytes.read(sha256), mediaType, fileName, asHandedIn: true }
  }
  const rendering = await record.bytes.rendering(photograph.sha256, kind)
  if (rendering === null) throw absent(`The ${kind} picture of exhibit E ${number}`)
  const bytes = Readable.from([Buffer.from(rendering.bytes)])
  return { bytes, mediaType: 'image/jpeg', fileName: `E ${number}.jpg`, asHandedIn: false }
}

function edition(program: Program, number: number): Served {
  const bytes = editionDocument(program, number)
  const issued = program
    .record()
    .view()
    .editions.find((one) => one.number === number)
  return { bytes, mediaType: 'application/pdf', fileName: `${issued?.reportNumber ?? number}.pdf`, asHandedIn: false }
}

const preview = (program: Program, id: string): Served => ({
  bytes: createReadStream(previewDocument(program, id)),
  mediaType: 'application/pdf',
  fileName: 'preview.pdf',
  asHandedIn: false,
})

/** Who wants to hear what the program says unasked. */
export class Listeners {
  private readonly hearing = new Set<(event: ProgramEvent) => void>()

  tell(event: ProgramEvent): void {
    for (const hear of this.hearing) hear(event)
  }

  listen(hear: (event: ProgramEvent) => void): () => void {
    this.hearing.add(hear)
    return () => this.hearing.delete(hear)
  }
}

export interface BegunProgram {
  readonly program: RunningProgram
  readonly behind: BehindTheDoor
}

/** Starts a program with no record open, and answers it together with what its doors see of it. */
export function beginProgram(
  folders: { readonly recordsFolder: string; readonly scratchFolder: string },
  useCases: UseCases,
): BegunProgram {
  const listeners = new Listeners()
  const program = startProgram({ ...folders, tell: (event) => listeners.tell(event) })
  const behind: BehindTheDoor = {
    ask: (name, input) => answer(program, useCases, name, input),
    listen: (hear) => listeners.listen(hear),
    keepUpload: (fileName, bytes) => program.acceptUpload(fileName, bytes),
    exhibit: (number, kind) => exhibit(program, number, kind),
    document: async (id) => preview(program, id),
    edition: async (number) => edition(program, number),
  }
  return { program, behind }
}
