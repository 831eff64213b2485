import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'
import { root, run, say, step } from './running.mjs'

const onPath = (name) =>
  (process.env.PATH ?? '').split(delimiter).some((folder) => folder !== '' && existsSync(join(folder, name)))

const isDebianRoot = () => process.getuid?.() === 0 && existsSync('/etc/debian_version') && onPath('apt-get')

/** Installs Debian packages as root; answers whether they are there now. */
async function fromDebian(packages) {
  const environment = { env: { DEBIAN_FRONTEND: 'noninteractive' } }
  const install = () =>
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', '-o', 'Dpkg::Use-Pty=0', ...packages], {
      ...environment,
      quiet: true,
    })
  return step(`installing ${packages.join(', ')} from Debian`, async () => {
    if ((await run('apt-get', ['update', '-qq'], { ...environment, quiet: true })) !== 0)
      say('  apt-get update failed; going on')
    return (await install()) === 0
  })
}

/** What programs outside the project are called, and the Debian package that brings each. */
export const documentTools = { pdftotext: 'poppler-utils', qpdf: 'qpdf' }
export const benchmarkTools = { sqlite3: 'sqlite3', vipsthumbnail: 'libvips-tools', img2pdf: 'img2pdf' }

/** Brings outside programs that only check or compare; where they cannot be had, says what will not be checked. */
export async function bringTools(tools) {
  const missing = Object.keys(tools).filter((name) => !onPath(name))
  if (missing.length === 0) return
  if (isDebianRoot() && (await fromDebian([...new Set(missing.map((name) => tools[name]))]))) return
  say(`  not on this machine: ${missing.join(', ')}. Checks that compare with them say so and are left out.`)
}

/** Brings a browser for the tests: Debian's as root, an installed one, or the one the test library keeps for itself. */
export async function bringBrowser() {
  const { browserForTests, debianBrowsers } = await import(join(root, '.built', 'test-browser.mjs'))
  for (const name of isDebianRoot() ? debianBrowsers() : []) if (await fromDebian([name])) return
  if (browserForTests() !== '') return
  const code = await step('fetching a browser for the tests (playwright)', () =>
    run(process.execPath, [
      join(root, 'node_modules', 'playwright', 'cli.js'),
      ...['install', '--only-shell', 'chromium'],
    ]),
  )
  if (code !== 0) throw new Error('No browser for the tests: install Chromium and run `npm test` again.')
}
