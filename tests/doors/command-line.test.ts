import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { text } from 'node:stream/consumers'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { builtPath } from '../../electron/places-on-disk.ts'
import { beginning } from '../record/sample-record.ts'

const photographs = resolve(import.meta.dirname, '..', 'fixtures', 'photographs')
const folder = mkdtempSync(join(tmpdir(), 'witnessmark-command-'))

interface Ended {
  readonly code: number | null
  readonly output: string
  readonly errors: string
}

/** Runs the built command line as a user would, standing in a folder with nothing in it. */
async function witnessmark(words: readonly string[], input = ''): Promise<Ended> {
  const child = spawn(process.execPath, [builtPath('command.mjs'), ...words], {
    cwd: folder,
    env: { ...process.env, HOME: folder },
  })
  child.stdin.end(input)
  const [output, errors, code] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    new Promise<number | null>((done) => child.on('close', done)),
  ])
  return { code, output, errors }
}

const oneLine = /^[^\n]+\n$/

beforeAll(async () => {
  const { particulars, commission, visit } = beginning
  writeFileSync(join(folder, 'car.json'), JSON.stringify({ particulars, commission, visit }))
  const made = await witnessmark(['make', 'barn.wmk', 'car.json'])
  expect(made).toEqual({ code: 0, output: `${join(folder, 'barn.wmk')}\n`, errors: '' })
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('a record by command line, from nothing to an issued report', () => {
  it('takes photographs, names the refused one, and the others go in', async () => {
    writeFileSync(join(folder, 'no-picture.jpg'), 'words, not a picture')
    const files = [join(photographs, 'orientation-6.jpg'), 'no-picture.jpg', join(photographs, 'wall-no-exif.jpg')]
    const said = await witnessmark(['import', 'barn.wmk', ...files])
    expect(said.output.trim().split('\n')).toHaveLength(2)
    expect(said.output).toMatch(/^E \d+\nE \d+\n$/)
    expect(said.errors).toMatch(/^no-picture\.jpg: .+\n$/)
    expect(said.code).toBe(1)
  })

  it('prints a register as a table', async () => {
    const { code, output } = await witnessmark(['table', 'barn.wmk', 'exhibits'])
    expect(code).toBe(0)
    expect(output).toContain('orientation-6.jpg')
    expect(output.trim().split('\n')).toHaveLength(3)
  })

  it('prints every computed conclusion as JSON', async () => {
    const { code, output } = await witnessmark(['assess', '--json', 'barn.wmk'])
    expect(code).toBe(0)
    expect(JSON.parse(output)).toMatchObject({ recordNumber: 'T-1', judgement: { coverage: expect.any(Array) } })
  })

  it('writes a preview without issuing, and keeps what lies there already', async () => {
    const words = ['report', 'barn.wmk', 'preview.pdf', '--paper', 'Letter']
    expect(await witnessmark(words)).toEqual({ code: 0, output: `${join(folder, 'preview.pdf')}\n`, errors: '' })
    const again = await witnessmark(words)
    expect([again.code, again.output]).toEqual([1, ''])
    expect(again.errors).toMatch(/is there already/)
    expect((await witnessmark([...words, '--replace'])).code).toBe(0)
  })

  it('issues an edition: the same bytes on paper and in the record', async () => {
    expect((await witnessmark(['issue', 'barn.wmk', 'first.pdf'])).code).toBe(0)
    expect(readFileSync(join(folder, 'first.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
    const second = await witnessmark(['issue', 'barn.wmk', 'second.pdf', '--reason', 'a finding was added'])
    expect([second.code, second.errors]).toEqual([0, ''])
    expect(statSync(join(folder, 'second.pdf')).size).toBeGreaterThan(1000)
  })

  it('verifies the journal, and leaves one file behind', async () => {
    const { code, output } = await witnessmark(['verify', 'barn.wmk'])
    expect([code, output]).toEqual([0, expect.stringMatching(/^\d+ journal rows, and the chain holds\n$/)])
    expect(existsSync(join(folder, 'barn.wmk-wal'))).toBe(false)
  })

  it('never makes over an existing record', async () => {
    const before = readFileSync(join(folder, 'barn.wmk'))
    const { code, errors } = await witnessmark(['make', 'barn.wmk'], readFileSync(join(folder, 'car.json'), 'utf8'))
    expect(code).toBe(1)
    expect(errors).toMatch(oneLine)
    expect(readFileSync(join(folder, 'barn.wmk')).equals(before)).toBe(true)
  })
})

it('computes from input to output: one inch is 25.4 mm exactly (international yard and pound agreement, 1959)', async () => {
  const { code, output } = await witnessmark(['compute', 'convert-length'], '{"value":1,"from":"in","to":"mm"}')
  expect([code, JSON.parse(output)]).toEqual([0, { value: 25.4, unit: 'mm' }])
})

describe('opening', () => {
  it('without a screen says why in one line and gives an address that works once; Enter gives another', async () => {
    const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...env } = process.env
    const child = spawn(process.execPath, [builtPath('command.mjs'), 'open', '--records', folder], { env })
    try {
      const said = { output: '', errors: '' }
      child.stdout.on('data', (part) => {
        said.output += part
      })
      child.stderr.on('data', (part) => {
        said.errors += part
      })
      const addresses = () =>
        [...said.output.matchAll(/^Open (http:\/\/127\.0\.0\.1:\d+\/open\/[\w-]{43})$/gm)].map(([, one]) => one ?? '')
      await expect.poll(addresses, { timeout: 10_000 }).toHaveLength(1)
      child.stdin.write('\n')
      await expect.poll(addresses, { timeout: 10_000 }).toHaveLength(2)
      const [first = '', second = ''] = addresses()
      expect((await fetch(first)).status).toBe(200)
      expect((await fetch(first)).status).toBe(403)
      expect((await fetch(second)).status).toBe(200)
      if (process.platform === 'linux') expect(said.errors).toBe('Opening as a page: this session has no screen.\n')
    } finally {
      child.kill('SIGTERM')
    }
    expect(await new Promise((done) => child.on('close', done))).toBe(0)
  })
})
