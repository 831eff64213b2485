import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { answerIdentity } from '../../electron/analysis/identity/answer-identity.ts'
import type { CircuitShelf } from '../../electron/analysis/identity/compiled-once.ts'
import { circuitsOnDisk } from '../../electron/use-cases/computing/circuits-on-disk.ts'
import { identityInput } from '../../shared-types/identity-answer.ts'
import { randomEvidence, randomModel } from '../analysis/identity/random-models.ts'

const MODEL_SEEDS = [11, 12, 13, 14, 15, 16]

/** Answers about a model of its own; the name keeps it apart from those compiled earlier in this process. */
function answer(seed: number, shelf: CircuitShelf | null, name: string) {
  const model = randomModel(seed)
  const doubts = [...model.doubts, { id: name, holds: 0.5 }]
  return answerIdentity(
    identityInput.parse({ model: { ...model, doubts }, evidence: randomEvidence(model, seed), builds: 2 }),
    shelf,
  )
}

describe('circuits kept on disk', () => {
  let folder: string
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'circuits-'))
  })
  afterEach(() => rmSync(folder, { recursive: true, force: true }))

  /** A shelf that counts what it found, and the answer of a model that only a kept circuit saves from compiling. */
  const counted = () => {
    const shelf = circuitsOnDisk(folder)
    const tally = { found: 0, kept: 0 }
    const counting: CircuitShelf = {
      find: (model) => {
        const circuit = shelf.find(model)
        if (circuit !== null) tally.found += 1
        return circuit
      },
      keep: (model, circuit) => {
        tally.kept += 1
        shelf.keep(model, circuit)
      },
    }
    return { tally, counting }
  }

  it('give the answers a circuit compiled now gives, to the last bit', () => {
    const { tally, counting } = counted()
    for (const seed of MODEL_SEEDS) answer(seed, counting, 'same')
    expect(tally).toEqual({ found: 0, kept: MODEL_SEEDS.length })
    // Only three models are remembered in the process: the first ones must come from the disk again.
    for (const seed of MODEL_SEEDS.slice(0, 3)) {
      const fromDisk = answer(seed, counting, 'same')
      for (const other of [901, 902, 903]) answer(other, null, 'fills the memory')
      expect(fromDisk).toEqual(answer(seed, null, 'same'))
    }
    expect(tally).toEqual({ found: 3, kept: MODEL_SEEDS.length })
  })

  it('are not used when damaged, cut off, or of another model', () => {
    const { tally, counting } = counted()
    for (const seed of [21, 22, 23, 24]) answer(seed, counting, 'damaged')
    for (const name of readdirSync(folder)) {
      const bytes = readFileSync(join(folder, name))
      bytes[bytes.length - 3] = (bytes[bytes.length - 3] ?? 0) ^ 1
      writeFileSync(join(folder, name), bytes)
    }
    const before = answer(21, counting, 'damaged')
    expect(tally.found).toBe(0)
    expect(tally.kept).toBe(5)
    for (const name of readdirSync(folder)) writeFileSync(join(folder, name), 'x')
    for (const other of [901, 902, 903]) answer(other, null, 'fills the memory')
    expect(answer(21, counting, 'damaged')).toEqual(before)
    expect(tally.found).toBe(0)
    const wrong: CircuitShelf = { find: () => circuitOf(22), keep: () => undefined }
    for (const other of [901, 902, 903]) answer(other, null, 'fills the memory')
    expect(answer(21, wrong, 'damaged')).toEqual(before)
  })

  const circuitOf = (seed: number) => {
    const found: Parameters<CircuitShelf['keep']>[1][] = []
    answer(seed, { find: () => null, keep: (_, circuit) => found.push(circuit) }, `for ${seed} alone`)
    return found[0] ?? null
  }

  it('take no more room than they may, the longest unused going first, and never stop an answer', () => {
    const one = answer(31, circuitsOnDisk(folder), 'room')
    const [first] = readdirSync(folder)
    const size = statSync(join(folder, first ?? '')).size
    for (const seed of [32, 33, 34, 35]) answer(seed, circuitsOnDisk(folder, 3 * size), 'room')
    const bytes = readdirSync(folder).reduce((sum, name) => sum + statSync(join(folder, name)).size, 0)
    expect(bytes).toBeLessThanOrEqual(3 * size)
    expect(readdirSync(folder)).not.toContain(first)
    const nowhere = join(folder, first ?? 'file')
    writeFileSync(nowhere, 'a file where the folder should be')
    for (const other of [901, 902, 903]) answer(other, null, 'fills the memory')
    expect(answer(31, circuitsOnDisk(nowhere), 'room')).toEqual(one)
  })
})
