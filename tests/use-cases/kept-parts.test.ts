import { expect, it } from 'vitest'
import { PartsKept, PartsSent } from '../../electron/use-cases/computing/kept-parts.ts'

it('a part sent once reaches the thread with every question, whatever is forgotten in between', () => {
  const sent = new PartsSent()
  const kept = new PartsKept()
  let values = 0
  for (let round = 0; round < 200; round += 1) {
    const key = String((round * 7) % (3 + (round % 17)))
    const input = { model: { about: key }, asked: round }
    const [rest, part] = sent.without(input, { field: 'model', key }, 1)
    if (part.value !== undefined) values += 1
    expect(kept.whole(rest, part)).toEqual(input)
  }
  expect(values).toBeLessThan(150)
})

it('a thread begun anew is sent everything again', () => {
  const sent = new PartsSent()
  const input = { model: { about: 'a' } }
  const keeps = { field: 'model', key: 'a' }
  expect(sent.without(input, keeps, 1)[1].value).toEqual(input.model)
  expect(sent.without(input, keeps, 1)[1].value).toBeUndefined()
  const [rest, part] = sent.without(input, keeps, 2)
  expect(new PartsKept().whole(rest, part)).toEqual(input)
})
