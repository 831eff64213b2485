import { createHash } from 'node:crypto'
import { Connection } from '../../electron/record/connection.ts'

/** Every table of a record file, row for row, as text one can compare and read; blobs as their hashes. */
export async function dumpTables(path: string): Promise<{ readonly [table: string]: readonly string[] }> {
  const connection = await Connection.open(path, 'read')
  try {
    const tables = await connection.all("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
    const dump: { [table: string]: readonly string[] } = {}
    for (const { name } of tables) {
      const rows = await connection.all(`SELECT * FROM ${name}`)
      const readable = (_: string, value: unknown) =>
        value instanceof Uint8Array ? createHash('sha256').update(value).digest('hex') : value
      // A Buffer would turn itself into JSON before the replacer sees it, so cells are handled one by one.
      dump[String(name)] = rows
        .map((row) => JSON.stringify(Object.entries(row).map(([key, cell]) => [key, readable(key, cell)])))
        .sort()
    }
    return dump
  } finally {
    await connection.close()
  }
}
