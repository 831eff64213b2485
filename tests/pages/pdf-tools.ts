import { execFileSync, spawnSync } from 'node:child_process'

const there = (name: string): boolean => spawnSync(name, ['-v']).error === undefined

/** True where the outside readers of PDF are installed (Debian: poppler-utils, qpdf). */
export const pdfToolsThere = there('pdftotext') && there('qpdf')

const run = (name: string, words: readonly string[]): string =>
  execFileSync(name, words, { encoding: 'utf8', maxBuffer: 256 * 1024 * 1024 })

/** Text of a PDF as poppler reads it, lines in reading order. */
export const textOf = (path: string): string => run('pdftotext', ['-enc', 'UTF-8', path, '-'])

/** Text with line breaks and runs of space taken out, for looking up words that were broken over lines. */
export const runningTextOf = (path: string): string => textOf(path).replace(/\s+/gu, ' ')

/** Facts of `pdfinfo` by name. */
export function factsOf(path: string): ReadonlyMap<string, string> {
  const lines = run('pdfinfo', [path]).split('\n')
  return new Map(lines.map((line) => [line.split(':', 1)[0] ?? '', line.slice(line.indexOf(':') + 1).trim()]))
}

/** Rows of `pdffonts` after its head: name, kind and whether embedded, subset and mapped to Unicode. */
export function fontsOf(
  path: string,
): readonly { readonly embedded: boolean; readonly unicode: boolean; readonly row: string }[] {
  const rows = run('pdffonts', [path])
    .split('\n')
    .slice(2)
    .filter((row) => row.trim() !== '')
  return rows.map((row) => {
    const [embedded, , unicode] = row.match(/\b(yes|no)\b/g) ?? []
    return { embedded: embedded === 'yes', unicode: unicode === 'yes', row }
  })
}

/** Number of pictures `pdfimages` lists, soft masks left out. */
export const picturesIn = (path: string): number =>
  run('pdfimages', ['-list', path])
    .split('\n')
    .slice(2)
    .filter((row) => /\bimage\b/.test(row)).length

/** Throws with qpdf's words when it finds the syntax or the cross-references unsound. */
export function checkSyntax(path: string): void {
  run('qpdf', ['--check', path])
}

/** Names of actions and scripts anywhere in the file, with streams opened. */
export function actionsIn(path: string): readonly string[] {
  const objects = run('qpdf', ['--qdf', '--object-streams=disable', '--stream-data=preserve', path, '-'])
  return [...objects.matchAll(/^\s*\/(OpenAction|JavaScript|JS|Launch|AA|SubmitForm)\b/gm)].map(
    (found) => found[1] ?? '',
  )
}
