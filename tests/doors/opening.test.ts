import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { chooseWindow, type Surroundings, whyNoWindow } from '../../electron/doors/opening/choose-window.ts'
import type { BinaryPlaces } from '../../electron/doors/opening/electron-binary.ts'

const desktop: Surroundings = { platform: 'linux', environment: { DISPLAY: ':0' }, isSuperuser: false }

describe('whether a window can be shown', () => {
  it.each<[string, Partial<Surroundings>, RegExp | null]>([
    ['a desktop session', {}, null],
    ['a desktop session of the newer kind', { environment: { WAYLAND_DISPLAY: 'wayland-0' } }, null],
    ['a session without a screen', { environment: {} }, /no screen/],
    ['the superuser, as whom the sandbox would be off', { isSuperuser: true }, /sandbox/],
    ['a desktop system that always has one', { platform: 'darwin', environment: {} }, null],
  ])('%s', (_where, around, why) => {
    const said = whyNoWindow({ ...desktop, ...around })
    if (why === null) expect(said).toBeNull()
    else expect(said).toMatch(why)
  })
})

describe('the binary of the desktop window', () => {
  let folder = ''
  let places: BinaryPlaces = { packageFolder: '', failureFile: '' }
  const said: string[] = []

  /** A package as published: it answers the path of its binary once its own script has fetched it. */
  function plantPackage(installScript: string): void {
    mkdirSync(places.packageFolder, { recursive: true })
    writeFileSync(join(places.packageFolder, 'package.json'), '{"name":"electron","version":"1.0.0"}')
    writeFileSync(
      join(places.packageFolder, 'index.js'),
      "const binary = require('path').join(__dirname, 'binary')\nif (!require('fs').existsSync(binary)) throw new Error('not installed')\nmodule.exports = binary\n",
    )
    writeFileSync(join(places.packageFolder, 'install.js'), installScript)
  }
  const fetches = `if (process.env.ELECTRON_SKIP_BINARY_DOWNLOAD) process.exit(0)\nrequire('fs').writeFileSync(require('path').join(__dirname, 'binary'), '')\n`
  const fails = `console.error('Error: connect ECONNREFUSED\\n    at somewhere')\nprocess.exit(1)\n`
  const choose = (insist = false) => chooseWindow(desktop, places, insist, (line) => said.push(line))

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'witnessmark-binary-'))
    places = { packageFolder: join(folder, 'electron'), failureFile: join(folder, 'built', 'not-fetched') }
    said.length = 0
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  it('is used when it is there, without a word', () => {
    plantPackage(fails)
    writeFileSync(join(places.packageFolder, 'binary'), '')
    chmodSync(join(places.packageFolder, 'binary'), 0o755)
    expect(choose()).toEqual({ binary: join(places.packageFolder, 'binary') })
    expect(said).toEqual([])
  })

  it('is fetched when a window is first wanted, even where installing was told to leave it', () => {
    plantPackage(fetches)
    process.env.ELECTRON_SKIP_BINARY_DOWNLOAD = '1'
    try {
      expect(choose()).toEqual({ binary: join(places.packageFolder, 'binary') })
    } finally {
      delete process.env.ELECTRON_SKIP_BINARY_DOWNLOAD
    }
    expect(said).toHaveLength(1)
  })

  it('that cannot be fetched is no fault: the program opens as a page and says why in one line', () => {
    plantPackage(fails)
    const choice = choose()
    expect(choice).toEqual({ asPageBecause: 'the desktop window could not be fetched (Error: connect ECONNREFUSED)' })
    expect(JSON.stringify(choice)).not.toContain('\\n')
  })

  it('is not tried for at every start: a day later, or at once when insisted', () => {
    plantPackage(fails)
    choose()
    expect(choose()).toMatchObject({ asPageBecause: expect.stringContaining('within the last day') })
    writeFileSync(join(places.packageFolder, 'install.js'), fetches)
    expect(choose(true)).toMatchObject({ binary: expect.any(String) })
    expect(existsSync(places.failureFile)).toBe(false)
  })

  it('is tried for again after a day', () => {
    plantPackage(fails)
    choose()
    writeFileSync(join(places.packageFolder, 'install.js'), fetches)
    const yesterday = Date.now() / 1000 - 86_401
    utimesSync(places.failureFile, yesterday, yesterday)
    expect(choose()).toMatchObject({ binary: expect.any(String) })
  })

  it('is not asked for where no window can be shown', () => {
    plantPackage(fetches)
    expect(chooseWindow({ ...desktop, environment: {} }, places, true, (line) => said.push(line))).toEqual({
      asPageBecause: 'this session has no screen',
    })
    expect(said).toEqual([])
    expect(existsSync(join(places.packageFolder, 'binary'))).toBe(false)
  })
})
