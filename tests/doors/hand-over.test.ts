import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, describe, expect, it } from 'vitest'
import { handOver } from '../../electron/doors/opening/hand-over.ts'
import { showInBrowser } from '../../electron/doors/opening/show-page.ts'

const address = 'http://127.0.0.1:4321/open/secret-token'
const folder = mkdtempSync(join(tmpdir(), 'witnessmark-handing-'))
afterEach(() => rmSync(join(folder, 'said.txt'), { force: true }))

describe('the address handed to a browser', () => {
  it('lies in a file only this user can read, in a folder only this user can enter', () => {
    const { fileAddress, remove } = handOver(address)
    const file = fileURLToPath(fileAddress)
    expect(fileAddress).not.toContain('secret-token')
    expect(readFileSync(file, 'utf8')).toContain(address)
    expect(statSync(file).mode & 0o777).toBe(0o600)
    expect(statSync(dirname(file)).mode & 0o777).toBe(0o700)
    remove()
    expect(existsSync(dirname(file))).toBe(false)
  })

  it.each(['http://rebound.example/open/a', 'javascript:alert(1)', 'http://127.0.0.1:1/open/a"><script>'])(
    'is one of this program: %s is refused',
    (foreign) => {
      expect(() => handOver(foreign)).toThrow()
    },
  )

  it('does not stand among the arguments of the browser', async () => {
    const browser = join(folder, 'browser')
    writeFileSync(browser, `#!/bin/sh\nprintf '%s\\n' "$@" > ${join(folder, 'said.txt')}\n`)
    chmodSync(browser, 0o755)
    const page = { port: 4321, freshAddress: () => address, close: async () => {} }
    expect(await showInBrowser(browser, page, folder, new AbortController().signal)).toBe(true)
    const said = readFileSync(join(folder, 'said.txt'), 'utf8')
    expect(said).toMatch(/^--app=file:\/\/\/.*open\.html$/m)
    expect(said).not.toContain('secret-token')
    expect(said).not.toContain('no-sandbox')
  })

  it('is taken back when the browser could not be started', async () => {
    const page = { port: 4321, freshAddress: () => address, close: async () => {} }
    expect(await showInBrowser(join(folder, 'none'), page, folder, new AbortController().signal)).toBe(false)
  })
})
