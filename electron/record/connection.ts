import sqlite3 from 'sqlite3'

/** What a cell of a row holds on this side of the adapter. */
export type Cell = string | number | null | Uint8Array
export type Row = Readonly<Record<string, Cell>>
/** One SQL text with its values, in the order of its question marks. */
export type Step = readonly [sql: string, ...values: Cell[]]

/** Why the storage refused, in the words the rest of the record understands. */
export type FaultKind = 'busy' | 'damaged' | 'foreign' | 'full' | 'read-only' | 'cannot-open' | 'constraint' | 'other'

const kinds: { readonly [code: string]: FaultKind } = {
  SQLITE_BUSY: 'busy',
  SQLITE_LOCKED: 'busy',
  SQLITE_CORRUPT: 'damaged',
  SQLITE_NOTADB: 'foreign',
  SQLITE_FULL: 'full',
  SQLITE_READONLY: 'read-only',
  SQLITE_CANTOPEN: 'cannot-open',
  SQLITE_PERM: 'cannot-open',
  SQLITE_CONSTRAINT: 'constraint',
}

/** Thrown by every function of this file. */
export class StorageFault extends Error {
  readonly kind: FaultKind
  constructor(fault: Error & { code?: string }) {
    super(fault.message, { cause: fault })
    this.name = 'StorageFault'
    this.kind = kinds[fault.code ?? ''] ?? 'other'
  }
}

const modes = {
  create: sqlite3.OPEN_READWRITE | sqlite3.OPEN_CREATE,
  write: sqlite3.OPEN_READWRITE,
  read: sqlite3.OPEN_READONLY,
}

type Done<Result> = (fault: Error | null, result?: Result) => void
const promised = <Result>(start: (done: Done<Result>) => void): Promise<Result> =>
  new Promise((resolve, reject) => {
    start((fault, result) => (fault ? reject(new StorageFault(fault)) : resolve(result as Result)))
  })

const bound = (values: readonly Cell[]) =>
  values.map((value) =>
    value instanceof Uint8Array ? Buffer.from(value.buffer, value.byteOffset, value.byteLength) : value,
  )

/**
 * The one narrow adapter over the `sqlite3` package: nothing else in the program imports it. Every statement is
 * prepared once, kept, and finalised at `close`; a forgotten one would make closing fail and leave side files.
 */
export class Connection {
  readonly #database: sqlite3.Database
  readonly #statements = new Map<string, Promise<sqlite3.Statement>>()

  private constructor(database: sqlite3.Database) {
    this.#database = database
  }

  /** Opens a file; `create` makes it when it is not there. Waits up to two seconds for another's lock. */
  static async open(path: string, mode: keyof typeof modes): Promise<Connection> {
    const database = await promised<sqlite3.Database>((done) => {
      const opening: sqlite3.Database = new sqlite3.Database(path, modes[mode], (fault) => done(fault, opening))
    })
    database.configure('busyTimeout', 2000)
    return new Connection(database)
  }

  #statement(sql: string): Promise<sqlite3.Statement> {
    const kept = this.#statements.get(sql)
    if (kept) return kept
    const prepared = promised<sqlite3.Statement>((done) => {
      const statement: sqlite3.Statement = this.#database.prepare(sql, (fault: Error | null) => done(fault, statement))
    })
    this.#statements.set(sql, prepared)
    prepared.catch(() => this.#statements.delete(sql))
    return prepared
  }

  async run(sql: string, ...values: Cell[]): Promise<void> {
    const statement = await this.#statement(sql)
    await promised<void>((done) => statement.run(bound(values), done))
  }

  /** Every row the statement gives. Read to the end, so that no read lock stays behind. */
  async all(sql: string, ...values: Cell[]): Promise<readonly Row[]> {
    const statement = await this.#statement(sql)
    return promised<Row[]>((done) => statement.all<Row>(bound(values), done))
  }

  async get(sql: string, ...values: Cell[]): Promise<Row | undefined> {
    return (await this.all(sql, ...values))[0]
  }

  /** A setting or a fact of the file: `pragma('user_version')`, `pragma('user_version = 2')`. Not kept as a statement. */
  async pragma(text: string): Promise<Cell> {
    const rows = await promised<Row[]>((done) => this.#database.all<Row>(`PRAGMA ${text}`, done))
    return Object.values(rows[0] ?? {})[0] ?? null
  }

  /** Runs a text of several statements without values. */
  script(sql: string): Promise<void> {
    return promised<void>((done) => this.#database.exec(sql, done))
  }

  /** All steps or none. Answers when the commit is on the disk as far as `synchronous` asks. */
  async transaction(steps: readonly Step[]): Promise<void> {
    await this.run('BEGIN IMMEDIATE')
    try {
      for (const [sql, ...values] of steps) await this.run(sql, ...values)
      await this.run('COMMIT')
    } catch (fault) {
      // SQLite has already rolled back after some faults; then there is nothing left to roll back.
      await this.run('ROLLBACK').catch(() => undefined)
      throw fault
    }
  }

  async close(): Promise<void> {
    for (const preparing of this.#statements.values()) {
      const statement = await preparing.catch(() => null)
      if (statement) await new Promise<void>((resolve) => statement.finalize(() => resolve()))
    }
    this.#statements.clear()
    await promised<void>((done) => this.#database.close(done))
  }
}
