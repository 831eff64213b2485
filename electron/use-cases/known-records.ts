import { existsSync } from 'node:fs'
import { mkdir, readdir, readFile, rename, stat, writeFile } from 'node:fs/promises'
import { basename, join } from 'node:path'
import { z } from 'zod'
import type { KnownRecord, RecordView } from '../../shared-types/record.ts'

const FILE = 'known-records.json'
const MOST = 200
const knownFile = z.array(
  z.object({ path: z.string(), title: z.string(), recordNumber: z.string(), changedAt: z.string() }),
)
type Known = z.infer<typeof knownFile>[number]

/** The list as last written; a list that cannot be read is begun anew, since it holds nothing that the records do not. */
async function read(folder: string): Promise<readonly Known[]> {
  try {
    return knownFile.parse(JSON.parse(await readFile(join(folder, FILE), 'utf8')))
  } catch {
    return []
  }
}

/** Notes an open record at the head of the list. */
export async function noteRecord(folder: string, view: RecordView, at: string): Promise<void> {
  const noted: Known = {
    path: view.path,
    title: view.particulars.title,
    recordNumber: view.commission.recordNumber,
    changedAt: at,
  }
  const others = (await read(folder)).filter((known) => known.path !== view.path)
  await mkdir(folder, { recursive: true })
  const fresh = join(folder, `${FILE}.${process.pid}`)
  await writeFile(fresh, `${JSON.stringify([noted, ...others].slice(0, MOST), null, 1)}\n`, { mode: 0o600 })
  await rename(fresh, join(folder, FILE))
}

/** When a record was last written: its file, or the log SQLite keeps beside it while it is open. Null when the file is gone. */
async function writtenAt(path: string): Promise<string | null> {
  const [file, log] = await Promise.all([path, `${path}-wal`].map((each) => stat(each).catch(() => null)))
  if (file == null) return null
  return new Date(Math.max(file.mtimeMs, log?.mtimeMs ?? 0)).toISOString()
}

/** Records opened before, the last written first, and those lying in the records folder that were never opened here. */
export async function knownRecords(folder: string): Promise<readonly KnownRecord[]> {
  const noted = await read(folder)
  const lying = existsSync(folder) ? (await readdir(folder)).filter((name) => name.endsWith('.wmk')) : []
  const strangers = lying
    .map((name) => join(folder, name))
    .filter((path) => !noted.some((known) => known.path === path))
  const all = [...noted, ...strangers.map(stranger)].map(async (known) => {
    const changedAt = await writtenAt(known.path)
    return { ...known, changedAt: changedAt ?? known.changedAt, missing: changedAt === null }
  })
  return (await Promise.all(all)).toSorted((one, other) => other.changedAt.localeCompare(one.changedAt))
}

const stranger = (path: string): Known => ({ path, title: basename(path, '.wmk'), recordNumber: '', changedAt: '' })
