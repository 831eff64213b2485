import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makeDemonstration } from '../../../electron/use-cases/demonstration.ts'
import type { UseCase } from '../../../electron/use-cases/program.ts'
import { type RunningProgram, startProgram } from '../../../electron/use-cases/running-program.ts'
import { useCases } from '../../../electron/use-cases/use-cases.ts'
import type { RequestInput, RequestName } from '../../../shared-types/contract.ts'
import type { Observation } from '../../../shared-types/observation.ts'

const ROUNDS = 40

function ask<N extends RequestName>(program: RunningProgram, name: N, input: RequestInput<N>) {
  return (useCases[name] as UseCase<N>)(program, input)
}

const saw = (value: string): Observation => ({
  tell: 'sedge/loom-bracket',
  state: 'seen',
  value,
  surePercent: null,
  measured: null,
  exhibits: [],
  note: '',
})

/** From an observation sent to the answer with one because-chain open, behind the door; wall clock, the demonstration car. */
export async function answerAfterAKey() {
  const folder = mkdtempSync(join(tmpdir(), 'identity-answer-'))
  const program = startProgram({
    recordsFolder: folder,
    scratchFolder: join(folder, 'scratch'),
    tell: () => undefined,
  })
  const noted: number[] = []
  const worked: number[] = []
  try {
    await makeDemonstration(program, join(folder, 'demonstration.wmk'))
    const asked = { whatIf: [], chainsOf: ['sedge/built'], claimChains: [] }
    const first = performance.now()
    await ask(program, 'identity.weights', asked)
    const firstMs = performance.now() - first
    for (let round = 0; round < ROUNDS; round += 1) {
      const value = round % 2 === 0 ? 'one-hole' : 'two-holes'
      const pressed = performance.now()
      const before = process.cpuUsage()
      await ask(program, 'observation.set', { commandId: randomUUID(), observation: saw(value) })
      await ask(program, 'identity.weights', asked)
      noted.push(performance.now() - pressed)
      const { user, system } = process.cpuUsage(before)
      worked.push((user + system) / 1000)
    }
    const shown = (times: readonly number[]) => {
      const sorted = times.toSorted((one, other) => one - other)
      const at = (share: number) => (sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN).toFixed(0)
      return `${at(0.5)} (${at(0.95)})`
    }
    return [
      {
        what: 'demonstration car, an observation noted and what the car can still be answered, ms: median (95th percentile)',
        ours: shown(noted),
        reference: null,
        ratio: null,
        aim: 'under 100',
      },
      {
        what: 'the same, processor time of all threads, ms',
        ours: shown(worked),
        reference: null,
        ratio: null,
        aim: '-',
      },
      {
        what: 'the same, first question of the program, sheets compiled, ms',
        ours: firstMs,
        reference: null,
        ratio: null,
        aim: '-',
      },
    ]
  } finally {
    await program.end()
    rmSync(folder, { recursive: true, force: true })
  }
}
