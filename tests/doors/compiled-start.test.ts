import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { Script } from 'node:vm'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'

const folder = mkdtempSync(join(tmpdir(), 'witnessmark-compiled-'))
const beside = (name: string): string => join(folder, name)
const saying = (word: string): string => `(function (require, __filename) { process.stdout.write('${word}') })`
const hashOf = (text: string): Buffer => createHash('sha256').update(text).digest()
const compiledOf = (text: string): Buffer => new Script(text, { filename: beside('said.cjs') }).createCachedData()

function started(compiled: Buffer | null): string {
  writeFileSync(beside('said.cjs'), saying('new'))
  rmSync(beside('said.compiled'), { force: true })
  if (compiled !== null) writeFileSync(beside('said.compiled'), compiled)
  const { stdout, stderr } = spawnSync(process.execPath, [beside('said.mjs')], { encoding: 'utf8' })
  return stdout + stderr
}

describe('a bundle started from what was compiled of it', () => {
  beforeAll(() => {
    copyFileSync(resolve(import.meta.dirname, '../../build/steps/start-compiled.mjs'), beside('said.mjs'))
  })
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  test('does what its text says', () => {
    expect(started(Buffer.concat([hashOf(saying('new')), compiledOf(saying('new'))]))).toBe('new')
  })

  test('starts as well when nothing was compiled, or what was is damaged', () => {
    expect(started(null)).toBe('new')
    expect(started(Buffer.alloc(5))).toBe('new')
    expect(started(Buffer.concat([hashOf(saying('new')), Buffer.from('no code')]))).toBe('new')
  })

  test('never does what another text of the same length said', () => {
    const old = saying('old')
    expect(started(Buffer.concat([hashOf(old), compiledOf(old)]))).toBe('new')
  })
})
