import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'

export interface HandOver {
  /** Address of the file; it holds no secret and may stand among a program's arguments. */
  readonly fileAddress: string
  remove(): void
}

/**
 * Writes an address with its token into a file only this user can read, which a browser opens and follows. Arguments of
 * a process can be read by every user of a machine; this file cannot.
 */
export function handOver(address: string): HandOver {
  if (!/^http:\/\/127\.0\.0\.1:\d+\/open\/[\w-]+$/.test(address))
    throw new Error('Only an address of this program is handed over.')
  const folder = mkdtempSync(join(tmpdir(), 'witnessmark-open-'))
  const file = join(folder, 'open.html')
  const page = `<!doctype html><meta charset="utf-8"><meta name="referrer" content="no-referrer"><meta http-equiv="refresh" content="0;url=${address}"><title>Witnessmark</title>`
  writeFileSync(file, page, { mode: 0o600, flag: 'wx' })
  return { fileAddress: pathToFileURL(file).href, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
