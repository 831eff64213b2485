import { describe, expect, test } from 'vitest'
import { LatestQuestion } from '../../renderer/store/latest-question.ts'

/** Questions that are under way until they are answered, and a log of what was asked and taken. */
function heldQuestions() {
  const log: string[] = []
  const questions = new LatestQuestion()
  const ask = (name: string) => {
    let answer: () => void = () => undefined
    let fail: () => void = () => undefined
    const held = new Promise<string>((done, failed) => {
      answer = () => done(name)
      fail = () => failed(new Error(name))
    })
    questions.ask(
      () => {
        log.push(`${name} asked`)
        return held
      },
      (answered) => log.push(`${answered} taken`),
      (thrown) => log.push(`${thrown instanceof Error ? thrown.message : ''} refused`),
    )
    return { answer: () => answer(), fail: () => fail() }
  }
  return { log, questions, ask }
}

const soon = () => new Promise((done) => setTimeout(done, 0))

describe('questions that follow one another quickly', () => {
  test('the first is asked at once, the last when it is answered, and none between', async () => {
    const { log, ask } = heldQuestions()
    const [first, , third] = [ask('first'), ask('second'), ask('third')]
    expect(log).toEqual(['first asked'])
    first?.answer()
    await soon()
    expect(log).toEqual(['first asked', 'third asked'])
    third?.answer()
    await soon()
    expect(log).toEqual(['first asked', 'third asked', 'third taken'])
  })

  test('an answer that nothing waits behind is taken, and a new question is asked at once again', async () => {
    const { log, ask } = heldQuestions()
    ask('first').answer()
    await soon()
    ask('second').answer()
    await soon()
    expect(log).toEqual(['first asked', 'first taken', 'second asked', 'second taken'])
  })

  test('neither answer nor problem of what was overtaken is taken; the problem of the last is', async () => {
    const { log, ask } = heldQuestions()
    const [first, second] = [ask('first'), ask('second')]
    first.fail()
    await soon()
    expect(log).toEqual(['first asked', 'second asked'])
    second.fail()
    await soon()
    expect(log).toEqual(['first asked', 'second asked', 'second refused'])
  })

  test('what has not begun is left out when it is no longer wanted, and what is under way is taken', async () => {
    const { log, questions, ask } = heldQuestions()
    const [first] = [ask('first'), ask('second')]
    questions.forget()
    first.answer()
    await soon()
    expect(log).toEqual(['first asked', 'first taken'])
  })
})
