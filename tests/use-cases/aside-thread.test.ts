import { describe, expect, it } from 'vitest'
import { AsideThread } from '../../electron/use-cases/computing/aside-thread.ts'
import type { ComputationAsked } from '../../electron/use-cases/computing/compute-aside.ts'

const LONGEST_MS = 60_000
const begin = () => new AsideThread<ComputationAsked>('computation-worker.mjs', LONGEST_MS, 'too long')
const inches = (value: unknown): ComputationAsked => ({
  name: 'convert-length',
  input: { value, from: 'in', to: 'mm' },
  kept: null,
  shelf: null,
})

describe('a thread of its own', () => {
  it('is at rest before it is asked anything', async () => {
    await begin().atRest()
  })

  it('is at rest when all it was asked is answered or refused, and not before', async () => {
    const thread = begin()
    const ended: string[] = []
    const note = (word: string) => () => ended.push(word)
    void thread.ask(inches(1)).then(note('answered'))
    void thread.ask({ ...inches(1), name: 'no such computation' as ComputationAsked['name'] }).catch(note('refused'))
    void thread.ask(inches(2)).then(note('answered'))
    expect(ended).toEqual([])
    await thread.atRest()
    expect(ended).toEqual(['answered', 'refused', 'answered'])
    await thread.atRest()
  })
})
