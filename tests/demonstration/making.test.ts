import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeDemonstration } from '../../electron/use-cases/demonstration.ts'
import { startProgram } from '../../electron/use-cases/running-program.ts'
import type { JournalEntry, RecordView } from '../../shared-types/record.ts'

interface Made {
  readonly view: RecordView
  readonly entries: readonly JournalEntry[]
  readonly sound: boolean
}

let folder: string
let first: Made
let second: Made

async function made(name: string): Promise<Made> {
  const program = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
  try {
    await makeDemonstration(program, join(folder, name))
    const record = program.record()
    const entries: JournalEntry[] = []
    for (let more = true; more; ) {
      const part = await record.journal(entries.at(-1)?.number ?? null, 500)
      entries.push(...part.entries)
      more = part.more
    }
    return { view: record.view(), entries, sound: (await record.verify()).sound }
  } finally {
    await program.end()
  }
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'demonstration-'))
  first = await made('one.wmk')
  second = await made('two.wmk')
}, 120_000)

afterAll(() => rm(folder, { recursive: true, force: true }))

describe('the demonstration record', () => {
  it('goes in by the use cases, every step, and its journal verifies', () => {
    expect(first.sound).toBe(true)
    expect(first.view.findings.length).toBeGreaterThanOrEqual(16)
    expect(first.view.spots.length).toBeGreaterThanOrEqual(60)
    expect(first.view.parts.length).toBeGreaterThanOrEqual(60)
    expect(first.view.corrections.map((correction) => correction.state).sort()).toEqual([
      'done',
      'done',
      ...Array<string>(7).fill('planned'),
      'verified',
    ])
  })

  it('is the same each time it is made, to the last hash of its journal, photographs included', () => {
    expect(second.entries).toEqual(first.entries)
    const { path: _one, ...one } = first.view
    const { path: _two, ...two } = second.view
    expect(two).toEqual(one)
  })

  it('has photographs held in all ways of the camera, upright, with local time and offset', () => {
    const photographs = first.view.exhibits.flatMap(({ photograph }) => photograph ?? [])
    expect(photographs.length).toBeGreaterThanOrEqual(16)
    expect(new Set(photographs.map((photograph) => photograph.orientation))).toEqual(new Set([1, 3, 6, 8]))
    for (const { fileName, takenAt, takenOffset, focalLengthMm, camera, orientation, widthPx, heightPx } of photographs) {
      expect(takenAt, fileName).toMatch(/^2026-0[56]-\d\dT\d\d:\d\d:\d\d$/)
      expect(takenOffset, fileName).toBe('+01:00')
      expect(focalLengthMm, fileName).toBeGreaterThan(20)
      expect(camera, fileName).toBe('')
      expect(Math.max(widthPx, heightPx) / Math.min(widthPx, heightPx), fileName).toBeCloseTo(1.5, 2)
      if (fileName.startsWith('brake-hose')) expect([orientation, heightPx > widthPx]).toEqual([6, true])
    }
  })

  it('takes each picture before it is described, and no picture before the visit', () => {
    const [visit] = first.view.visits
    for (const { photograph, addedAt } of first.view.exhibits) {
      if (photograph === null) continue
      const taken = new Date(`${photograph.takenAt}${photograph.takenOffset}`).toISOString()
      expect(taken <= addedAt, photograph.fileName).toBe(true)
      expect(taken >= (visit?.beganAt ?? ''), photograph.fileName).toBe(true)
    }
  })

  it('refuses to write over a file, and leaves nothing half made beside it', async () => {
    await expect(made('one.wmk')).rejects.toThrow('already a record')
    expect((await readdir(folder)).filter((name) => name.startsWith('.making'))).toEqual([])
  })
})
