import { randomUUID } from 'node:crypto'
import { createWriteStream, mkdtempSync, readdirSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pipeline } from 'node:stream/promises'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { identityUseCases } from '../../electron/use-cases/identity.ts'
import { recordUseCases } from '../../electron/use-cases/records.ts'
import { editionDocument, previewDocument, reportUseCases } from '../../electron/use-cases/report.ts'
import { type RunningProgram, startProgram } from '../../electron/use-cases/running-program.ts'
import { has, textOf } from './composing.ts'
import { recordFixture } from './content-fixture.ts'

const folder = mkdtempSync(join(tmpdir(), 'editions-'))
const { particulars, commission, visits } = recordFixture()
let program: RunningProgram

const saved = async (number: number): Promise<string> => {
  const path = join(folder, `edition-${number}-${randomUUID()}.pdf`)
  await pipeline(editionDocument(program, number), createWriteStream(path))
  return path
}

beforeAll(async () => {
  program = startProgram({
    recordsFolder: folder,
    scratchFolder: join(folder, 'scratch'),
    now: () => '2026-11-17T12:00:00.000Z',
    tell: () => undefined,
  })
  const [visit] = visits
  if (visit === undefined) throw new Error('The fixture has no visit.')
  const { number: _number, ...draft } = visit
  await recordUseCases['records.create'](program, { fileName: 'car', particulars, commission, visit: draft })
})
afterAll(() => program.end())

describe('editions of an open record', () => {
  test('a preview says that it is none and can be fetched by its id alone', async () => {
    const { document, pages, byteLength } = await reportUseCases['report.preview'](program, { paper: 'Letter' })
    const path = previewDocument(program, document)
    expect(readFileSync(path)).toHaveLength(byteLength)
    expect(pages).toBeGreaterThan(10)
    if (has('pdftotext')) expect(textOf(path)).toContain('preview, not issued')
    expect(() => previewDocument(program, '../../record')).toThrow(/no longer there/)
  })

  test('an edition is frozen in the record and cannot be undone; sent again it is the same edition', async () => {
    const input = { commandId: randomUUID(), paper: 'A4' as const, reason: '' }
    const first = await reportUseCases['edition.issue'](program, input)
    const [edition] = program.record().view().editions
    const bytes = readFileSync(await saved(1))
    expect(bytes).toHaveLength(edition?.byteLength ?? 0)
    const again = await reportUseCases['edition.issue'](program, input)
    expect(again.journalNumber).toBe(first.journalNumber)
    expect(program.record().view().editions).toHaveLength(1)
    expect(first.undoState.undo).toBeNull()
    expect(() => editionDocument(program, 2)).toThrow(/no edition 2/)
  })

  test('the second edition names the first, its reason and what changed', async () => {
    await identityUseCases['commission.set'](program, {
      commandId: randomUUID(),
      commission: { ...commission, client: 'Another client' },
    })
    await reportUseCases['edition.issue'](program, {
      commandId: randomUUID(),
      paper: 'A4',
      reason: 'The client was wrongly named.',
    })
    if (!has('pdftotext')) return
    const text = textOf(await saved(2)).replace(/\s+/g, ' ')
    expect(text).toContain('This edition replaces edition 1, WM 26-0117-1')
    expect(text).toContain('The client was wrongly named.')
    expect(text).toContain('client “The client, a restorer” → “Another client”')
  })

  test('nothing missing stops an edition: the report says "not stated"', async () => {
    await identityUseCases['commission.set'](program, {
      commandId: randomUUID(),
      commission: { ...commission, client: '', effectiveDate: null, review: '' },
    })
    const missing = await reportUseCases['report.readiness'](program, {})
    expect(missing.map(({ line }) => line)).toEqual(expect.arrayContaining(['R03', 'R06', 'R56']))
    const { number } = await reportUseCases['edition.issue'](program, {
      commandId: randomUUID(),
      paper: 'A4',
      reason: 'x',
    })
    if (has('pdftotext')) expect(textOf(await saved(number ?? 0))).toMatch(/Client +not stated/)
  })
})

describe('a preview', () => {
  const preview = (taskId?: string) =>
    reportUseCases['report.preview'](program, taskId === undefined ? { paper: 'A4' } : { paper: 'A4', taskId })

  test('ends when its task is cancelled, and leaves nothing behind', async () => {
    const taskId = randomUUID()
    const making = preview(taskId)
    program.cancelTask(taskId)
    await expect(making).rejects.toThrow(/stopped before its last page/)
    expect(readdirSync(program.scratchFolder).filter((name) => name.endsWith('.unfinished'))).toEqual([])
  })

  test('of a task that nobody ended is whole, and old ones are thrown away', async () => {
    const made: string[] = []
    for (const client of ['first', 'second', 'third', 'fourth', 'fifth']) {
      await identityUseCases['commission.set'](program, {
        commandId: randomUUID(),
        commission: { ...commission, client },
      })
      made.push((await preview(randomUUID())).document)
    }
    expect(new Set(made).size).toBe(5)
    for (const document of made.slice(1))
      expect(readFileSync(previewDocument(program, document)).length).toBeGreaterThan(0)
    expect(() => previewDocument(program, made[0] ?? '')).toThrow(/no longer there/)
  })
})
