import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { answer } from '../../electron/doors/answer.ts'
import type { BehindTheDoor, Served } from '../../electron/doors/behind-the-door.ts'
import type { Program, UseCases } from '../../electron/use-cases/program.ts'
import type { ProgramEvent } from '../../shared-types/contract.ts'
import { type RequestName, requests } from '../../shared-types/contract.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'

/** A program no use case of these tests reaches into: doors know no trade. */
export const noProgram = {} as Program

/** Use cases that answer what they were asked, so that a test sees what came through the door. */
export const echoes = Object.fromEntries(
  Object.keys(requests).map((name) => [name, async (_program: Program, input: unknown) => ({ name, input })]),
) as unknown as UseCases

/** Echoing use cases, one of which does something else. */
export const echoesBut = (name: RequestName, act: () => Promise<unknown>): UseCases => ({ ...echoes, [name]: act })

const served = (text: string, mediaType: string, fileName: string, asHandedIn: boolean): Served => ({
  bytes: Readable.from([Buffer.from(text)]),
  mediaType,
  fileName,
  asHandedIn,
})

export interface StandIn extends BehindTheDoor {
  readonly uploads: { readonly fileName: string; readonly bytes: Buffer }[]
  tell(event: ProgramEvent): void
  readonly hearing: Set<(event: ProgramEvent) => void>
}

/** A program behind the door made of nothing: exhibit 1 is a picture, exhibit 2 a file with a hostile name and media type. */
export function standIn(useCases: UseCases = echoes): StandIn {
  const hearing = new Set<(event: ProgramEvent) => void>()
  const uploads: { fileName: string; bytes: Buffer }[] = []
  const hostile = '"; filename=evil.html\r\nset-cookie: a=b \u202Egpj.\uD800<script>.svg'
  return {
    uploads,
    hearing,
    tell: (event) => hearing.forEach((hear) => void hear(event)),
    ask: (name, input) => answer(noProgram, useCases, name, input),
    listen(hear) {
      hearing.add(hear)
      return () => hearing.delete(hear)
    },
    async keepUpload(fileName, bytes) {
      uploads.push({ fileName, bytes: await buffer(bytes) })
      return '0f1e2d3c-4b5a-4678-8796-a5b4c3d2e1f0'
    },
    async exhibit(number, kind) {
      if (number > 2) throw new ProblemError('not-found', `There is no exhibit E ${number}.`)
      if (kind === 'original') return served('<script>alert(1)</script>', 'image/svg+xml', hostile, true)
      return served(`picture ${number} ${kind}`, 'image/jpeg', 'E 1.jpg', false)
    },
    document: async (id) => served(`%PDF document ${id}`, 'application/pdf', 'preview.pdf', false),
    edition: async (number) => served(`%PDF edition ${number}`, 'application/pdf', 'report.pdf', false),
  }
}

/** A built page of three files, with a file beside it that must never be served. */
export function builtPage(): { readonly folder: string; readonly pageFolder: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'witnessmark-page-'))
  const pageFolder = join(folder, 'renderer')
  mkdirSync(join(pageFolder, 'assets'), { recursive: true })
  writeFileSync(join(pageFolder, 'index.html'), '<!doctype html><html><head></head><body>the page</body></html>')
  writeFileSync(join(pageFolder, 'assets', 'page.js'), 'export {}')
  writeFileSync(join(pageFolder, 'assets', 'notes.txt'), 'of a kind that is not served')
  writeFileSync(join(folder, 'secret.js'), 'secret')
  return { folder, pageFolder, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
