import { describe, expect, it } from 'vitest'
import { supportOfParts } from '../../../electron/analysis/sampling/part-support.ts'
import { enfsiSupportBands } from '../../../shared-types/support-scale.ts'

const part = (id: string, group: string | null, ifFactory: number, ...pool: [number, number, number][]) => ({
  id,
  label: id,
  group,
  ifFactory,
  pool: pool.map(([low, high, matching]) => ({ label: 'source', low, high, matching })),
})
const ratios = (answer: ReturnType<typeof supportOfParts>) => [answer.low.likelihoodRatio, answer.high.likelihoodRatio]

it('the bands of ENFSI 2015, guidance note 4', () => {
  // Bands as printed: 2-10 weak, 10-100 moderate, 100-1000 moderately strong, 1000-10 000 strong, to 10^6 very strong.
  expect(enfsiSupportBands.map(({ from, words }) => [from, words])).toEqual([
    [1, 'no support'],
    [2, 'weak'],
    [10, 'moderate'],
    [100, 'moderately strong'],
    [1000, 'strong'],
    [10_000, 'very strong'],
    [1_000_000, 'extremely strong'],
  ])
})

it('right number in a pool where one in twenty has it: 0.95 / 0.05, moderate', () => {
  const { low, high } = supportOfParts({ parts: [part('engine', null, 0.95, [50, 50, 1], [950, 950, 0])] })
  expect(low.likelihoodRatio).toBeCloseTo(19, 12)
  expect(high).toEqual(low)
  expect(low).toMatchObject({ supports: 'first', band: { words: 'moderate', from: 10, to: 100 } })
})

it('the right number says nothing where the whole pool carries it', () => {
  const { low } = supportOfParts({ parts: [part('carburettor', null, 1, [10_000, 10_000, 1])] })
  expect(low).toMatchObject({ likelihoodRatio: 1, supports: 'neither' })
})

describe('parts that travel together', () => {
  const pool: [number, number, number] = [100, 100, 0.1]
  it('count once', () => {
    const one = supportOfParts({ parts: [part('engine', 'engine', 1, pool)] })
    const three = supportOfParts({
      parts: ['engine', 'dynamo', 'carburettor'].map((id) => part(id, 'engine', 1, pool)),
    })
    expect(ratios(three)).toEqual(ratios(one))
    expect(three.groups[0]?.parts).toEqual(['engine', 'dynamo', 'carburettor'])
  })
  it('and as many times as there are groups otherwise', () => {
    const apart = supportOfParts({ parts: ['engine', 'axle', 'box'].map((id) => part(id, null, 1, pool)) })
    expect(ratios(apart)[0]).toBeCloseTo(1000, 9)
  })
})

it('a pool known as a range gives a range, the widest over every count in it', () => {
  const sources: [number, number, number][] = [
    [10, 40, 0.9],
    [5, 30, 0.4],
    [100, 300, 0.05],
  ]
  const tried: number[] = []
  for (const a of [10, 20, 30, 40])
    for (const b of [5, 15, 30])
      for (const c of [100, 200, 300]) tried.push((a * 0.9 + b * 0.4 + c * 0.05) / (a + b + c))
  const [low, high] = ratios(supportOfParts({ parts: [part('axle', null, 1, ...sources)] }))
  expect(low).toBeCloseTo(1 / Math.max(...tried), 9)
  expect(high).toBeCloseTo(1 / Math.min(...tried), 9)
})

it('nothing in the pool matches: decisive as far as the pool goes, and it says so', () => {
  const answer = supportOfParts({ parts: [part('engine', null, 0.9, [10, 10, 0])] })
  expect(answer.low).toMatchObject({ decisive: true, likelihoodRatio: null })
  expect(answer.notes.join()).toContain('as far as the pool is complete')
})

it('what the factory cannot have fitted speaks for the pool', () => {
  const { low } = supportOfParts({ parts: [part('engine', null, 0, [10, 10, 0.5])] })
  expect(low).toMatchObject({ supports: 'second', decisive: true })
})

it.each([
  [part('a', null, 1, [0, 0, 1]), /at least one/],
  [part('a', null, 1, [5, 4, 1]), /exchange/],
  [part('a', null, 0, [5, 5, 0]), /impossible both ways/],
])('refuses with a cure: %#', (wrong, words) => expect(() => supportOfParts({ parts: [wrong] })).toThrow(words))
