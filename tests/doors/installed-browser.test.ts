import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { installedBrowser, programOnPath } from '../../electron/doors/opening/installed-browser.ts'

describe('an installed browser for a window of its own', () => {
  let folder = ''
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'witnessmark-browser-'))
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  const plant = (name: string, mode: number) => {
    writeFileSync(join(folder, name), '#!/bin/sh\n')
    chmodSync(join(folder, name), mode)
  }

  it('is found on the path', () => {
    plant('chromium', 0o755)
    expect(installedBrowser('linux', { PATH: ['/nowhere', folder].join(delimiter) })).toBe(join(folder, 'chromium'))
  })

  it('is not a file that cannot be run', () => {
    plant('chromium', 0o644)
    expect(installedBrowser('linux', { PATH: folder })).toBeNull()
  })

  it('is asked for by its name, too', () => {
    plant('chromium-without-windows', 0o755)
    const environment = { PATH: ['/nowhere', folder].join(delimiter) }
    expect(programOnPath('chromium-without-windows', environment)).toBe(join(folder, 'chromium-without-windows'))
    expect(programOnPath('chromium', environment)).toBeNull()
  })

  it('is null where there is none', () => {
    expect(installedBrowser('linux', { PATH: folder })).toBeNull()
    expect(installedBrowser('win32', {})).toBeNull()
  })
})
