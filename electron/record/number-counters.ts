import type { NumberedRegister } from '../../shared-types/record.ts'
import type { Connection, Step } from './connection.ts'

/** Last number given in each register; absent while none was. They only ever grow. */
export type Counters = { readonly [R in NumberedRegister]?: number }

export async function readCounters(connection: Connection): Promise<Counters> {
  const rows = await connection.all('SELECT register, last FROM number_counters')
  return Object.fromEntries(rows.map((row) => [row.register, row.last])) as Counters
}

/** The steps that write down what a command took. */
export const counterSteps = (taken: Counters): readonly Step[] =>
  Object.entries(taken).map(([register, last]) => [
    'INSERT INTO number_counters (register, last) VALUES (?, ?) ON CONFLICT (register) DO UPDATE SET last = excluded.last',
    register,
    last,
  ])

/** Gives numbers to one command; they count as given only once the command is durable. */
export class NumberGiver {
  readonly #counters: Counters
  readonly #taken: { [R in NumberedRegister]?: number } = {}

  constructor(counters: Counters) {
    this.#counters = counters
  }

  take(register: NumberedRegister): number {
    const number = (this.#taken[register] ?? this.#counters[register] ?? 0) + 1
    this.#taken[register] = number
    return number
  }

  taken(): Counters {
    return { ...this.#taken }
  }
}
