import { describe, expect, test } from 'vitest'
import { OneAtATime } from '../../renderer/store/one-at-a-time.ts'

/** A task that is under way until it is let go. */
function heldTask(name: string, log: string[]): { readonly task: () => Promise<void>; readonly letGo: () => void } {
  let letGo: () => void = () => undefined
  const held = new Promise<void>((done) => {
    letGo = done
  })
  return {
    letGo: () => letGo(),
    task: async () => {
      log.push(`${name} begun`)
      await held
      log.push(`${name} ended`)
    },
  }
}

const soon = () => new Promise((done) => setTimeout(done, 0))

describe('questions that follow one another quickly', () => {
  test('the first is asked at once, the last when it is answered, and none between', async () => {
    const log: string[] = []
    const [first, second, third] = ['first', 'second', 'third'].map((name) => heldTask(name, log))
    const asking = new OneAtATime()
    for (const each of [first, second, third]) if (each !== undefined) asking.run(each.task)
    expect(log).toEqual(['first begun'])
    first?.letGo()
    await soon()
    expect(log).toEqual(['first begun', 'first ended', 'third begun'])
    third?.letGo()
    await soon()
    second?.letGo()
    expect(log).toEqual(['first begun', 'first ended', 'third begun', 'third ended'])
  })

  test('what has not begun is left out when it is no longer wanted', async () => {
    const log: string[] = []
    const [first, second] = ['first', 'second'].map((name) => heldTask(name, log))
    const asking = new OneAtATime()
    if (first === undefined || second === undefined) throw new Error('Two tasks were made.')
    asking.run(first.task)
    asking.run(second.task)
    asking.forget()
    first.letGo()
    await soon()
    expect(log).toEqual(['first begun', 'first ended'])
  })
})
