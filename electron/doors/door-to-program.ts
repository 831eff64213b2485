import { createReadStream } from 'node:fs'
import { stat } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { ProblemError } from '../../shared-types/problem.ts'
import type { Program, UseCases } from '../use-cases/program.ts'
import { answer } from './answer.ts'
import type { BehindTheDoor, PictureKind, Served } from './behind-the-door.ts'

/** What a started program offers its doors besides its use cases. */
export interface OfferedToDoors {
  readonly program: Program
  readonly useCases: UseCases
  listen: BehindTheDoor['listen']
  keepUpload: BehindTheDoor['keepUpload']
  /** Path of a document made for looking at; throws `not-found`. */
  documentPath(id: string): string
}

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
  const record = program.record()
  const found = record.view().editions.find((one) => one.number === number)
  if (found === undefined) throw absent(`Edition ${number}`)
  const fileName = `${found.reportNumber} edition ${number}.pdf`
  return { bytes: record.bytes.read(found.sha256), mediaType: 'application/pdf', fileName, asHandedIn: false }
}

async function document(path: string): Promise<Served> {
  await stat(path).catch(() => {
    throw new ProblemError('not-found', 'This preview is gone. Make it again.')
  })
  return { bytes: createReadStream(path), mediaType: 'application/pdf', fileName: 'preview.pdf', asHandedIn: false }
}

/** The program as a door sees it. */
export const doorTo = ({ program, useCases, listen, keepUpload, documentPath }: OfferedToDoors): BehindTheDoor => ({
  ask: (name, input) => answer(program, useCases, name, input),
  listen,
  keepUpload,
  exhibit: (number, kind) => exhibit(program, number, kind),
  document: async (id) => document(documentPath(id)),
  edition: async (number) => edition(program, number),
})
