import { describe, expect, it } from 'vitest'
import { coatingField } from '../../../electron/analysis/coating/coating-field.ts'
import { drawCoatingField } from '../../../electron/analysis/coating/drawn-panel.ts'
import { extentDifference } from '../../../electron/analysis/coating/extent-difference.ts'
import { type CoatingFieldInput, coatingFieldInput } from '../../../shared-types/coating.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { panelQuestion } from './panel-question.ts'

const dome = (x: number, y: number): number =>
  1500 * Math.sqrt(Math.max(0, 1 - ((x - 420) / 220) ** 2 - ((y - 330) / 160) ** 2))
const question = panelQuestion({ fillerUm: dome, filmUm: 115, readings: 60 })
const answer = coatingField(question)

describe('filler of one panel', () => {
  it('brackets a known dome, names its middle and ends in words, and calls that 90 %', () => {
    const volume = ((2 / 3) * Math.PI * 220 * 160 * 1500) / 1e6
    expect(answer.fillerVolumeCm3.low).toBeLessThan(volume)
    expect(answer.fillerVolumeCm3.high).toBeGreaterThan(volume)
    expect(Math.abs(answer.fillerVolumeCm3.middle / volume - 1)).toBeLessThan(0.15)
    expect(answer.fillerVolumeCm3.coverage).toBe(0.9)
    expect(answer.fillerVolumeCm3.words).toMatch(/cm³ \(.* to .*, (at least )?90 %\)/)
    expect(answer.fillerAreaM2.low).toBeGreaterThan(0.08)
    expect(answer.fillerAreaM2.high).toBeLessThan(0.15)
  })
  it('shows filler where it lies and none far from it, with thickness in between its ends', () => {
    const at = (x: number, y: number): number =>
      question.nodes.findIndex(({ xMm, yMm }) => Math.abs(xMm - x) <= 20 && Math.abs(yMm - y) <= 20)
    expect(answer.fillerChance[at(420, 330)]).toBeGreaterThan(0.97)
    expect(answer.fillerChance[at(900, 600)]).toBeLessThan(0.05)
    const { low, middle, high } = answer.thicknessUm
    expect(middle.every((value, node) => (low[node] ?? 0) <= value && value <= (high[node] ?? 0))).toBe(true)
  })
  it('leaves out what cannot be read, counts it as not assessed and gives no number there', () => {
    const half = { ...question, nodes: question.nodes.map((node) => ({ ...node, readable: node.xMm < 500 })) }
    const own = coatingField(half)
    expect(own.assessedM2).toBeCloseTo(0.35, 1)
    expect(own.assessedM2 + own.notAssessedM2).toBeCloseTo(0.7, 9)
    expect(own.fillerChance.filter((chance) => chance === -1)).toHaveLength(
      half.nodes.filter(({ readable }) => !readable).length,
    )
    expect(own.fillerVolumeCm3.middle).toBeLessThan(answer.fillerVolumeCm3.middle)
  })
  it('weighs each node by its true surface', () => {
    const twice = coatingField({
      ...question,
      nodes: question.nodes.map((node) => ({ ...node, areaMm2: 1.5 * node.areaMm2 })),
    })
    expect(twice.fillerVolumeCm3.middle / answer.fillerVolumeCm3.middle).toBeCloseTo(1.5, 6)
  })
  it('keeps a saturated reading as more than its limit: the volume is not what the limit alone would give', () => {
    const deep = panelQuestion({ fillerUm: (x, y) => 3 * dome(x, y), filmUm: 115, readings: 60 })
    const asLimit = {
      ...deep,
      readings: deep.readings.map(({ value, ...at }) => ({
        ...at,
        value: value.kind === 'more than' ? { kind: 'value' as const, um: value.um } : value,
      })),
    }
    const own = coatingField(deep)
    expect(own.saturated).toBeGreaterThan(3)
    expect(own.fillerVolumeCm3.middle).toBeGreaterThan(1.15 * coatingField(asLimit).fillerVolumeCm3.middle)
    expect(own.fillerVolumeCm3.words).toMatch(/beyond the gauge/)
  })
  it('says where to read next, with a reason, and what ten more would bring', () => {
    expect(answer.next.spots).toHaveLength(3)
    expect(answer.next.spots[0]?.words).toMatch(/nearest reading is \d+ mm away.*% of the doubt about the volume/)
    expect(answer.next.words).toMatch(/Another 10 readings .* from [\d.,]+ cm³ to about [\d.,]+ cm³/)
    const nothing = coatingField(panelQuestion({ fillerUm: () => 0, filmUm: 115, readings: 100 }))
    expect(nothing.fillerAreaM2.low).toBe(0)
    expect(nothing.fillerVolumeCm3.low).toBe(0)
  })
})

describe('the difference of two maps', () => {
  const mapped = (fillerUm: (x: number, y: number) => number, seed: string) => {
    const input = panelQuestion({ fillerUm, filmUm: 115, readings: 60, seed })
    const field = drawCoatingField(input, () => undefined)
    const base = { readings: 60, saturated: 0, assessedMm2: 700_000, deepestUm: 8000, thresholdUm: 300 }
    return {
      draws: field.extents.volumeMm3,
      question: { ...base, paint: field.readings.filter(({ thicknessUm }) => thicknessUm < 150).length },
    }
  }
  const before = mapped(dome, 'before')
  it('after filler was taken out excludes nought, and after nothing was done does not', () => {
    const removed = extentDifference(
      'volume',
      before,
      mapped(() => 0, 'after'),
      'difference',
    )
    expect(removed.high).toBeLessThan(0)
    const unchanged = extentDifference('volume', before, mapped(dome, 'again'), 'difference')
    expect(unchanged.low).toBeLessThan(0)
    expect(unchanged.high).toBeGreaterThan(0)
  })
  it('of a map with itself read anew is wider than either', () => {
    const both = extentDifference('volume', before, before, 'difference')
    const one = before.draws.toSorted()
    const width = (one[Math.floor(one.length * 0.95)] as number) - (one[Math.floor(one.length * 0.05)] as number)
    expect(both.high - both.low).toBeGreaterThan(1.1 * width)
  })
})

describe('bad input is answered, never computed on in silence', () => {
  const place = { xMm: 300, yMm: 300 }
  const withReadings = (readings: CoatingFieldInput['readings']): CoatingFieldInput => ({ ...question, readings })
  const value = (um: number) => ({ kind: 'value' as const, um })
  it('two readings at one point', () => {
    const twice = coatingField(withReadings([...question.readings, ...question.readings.slice(0, 5)]))
    expect(twice.fillerVolumeCm3.middle).toBeGreaterThan(0)
  })
  it('all equal', () => {
    const same = coatingField(withReadings(question.readings.map((reading) => ({ ...reading, value: value(115) }))))
    expect(same.fillerAreaM2.low).toBe(0)
    expect(same.fillerAreaM2.high).toBeLessThan(0.1)
  })
  it('one reading: answered, and not called 90 %', () => {
    const one = coatingField(withReadings([{ ...place, value: value(900) }]))
    expect(one.fillerVolumeCm3.coverage).toBeNull()
    expect(one.fillerVolumeCm3.words).toMatch(/1 readings are too few|too few/)
    expect(one.fillerVolumeCm3.high).toBeGreaterThan(one.fillerVolumeCm3.low)
  })
  it('none, and none that gave a value, say what to do', () => {
    expect(() => coatingField(withReadings([]))).toThrow(/no reading yet/)
    expect(() => coatingField(withReadings([{ ...place, value: { kind: 'no reading' } }]))).toThrow(ProblemError)
    expect(() => coatingField(withReadings([{ xMm: 9000, yMm: 0, value: value(100) }]))).toThrow(/outside the panel/)
  })
  it('all saturated: a lower end above nought and an upper end that names its supposition', () => {
    const all = coatingField(
      withReadings(
        question.readings.map(({ value: _, ...at }) => ({ ...at, value: { kind: 'more than' as const, um: 2000 } })),
      ),
    )
    expect(all.fillerAreaM2.low).toBeGreaterThan(0.5)
    expect(all.fillerVolumeCm3.low).toBeGreaterThan(0.6 * 0.7 * 1885)
    expect(all.fillerVolumeCm3.words).toMatch(/no deeper than 8 mm/)
  })
  it('all nodes non-readable: nothing assessed and nothing said of filler', () => {
    const none = coatingField({ ...question, nodes: question.nodes.map((node) => ({ ...node, readable: false })) })
    expect([none.assessedM2, none.fillerAreaM2.coverage]).toEqual([0, null])
    expect(none.notAssessedM2).toBeCloseTo(0.7, 9)
    expect(none.fillerAreaM2.words).toMatch(/says nothing about filler/)
  })
  it('negative, huge and missing numbers are refused by the schema', () => {
    for (const um of [-1, 1e9, Number.NaN, Number.POSITIVE_INFINITY])
      expect(coatingFieldInput.safeParse({ ...question, readings: [{ ...place, value: value(um) }] }).success).toBe(
        false,
      )
    expect(coatingFieldInput.safeParse({ ...question, nodes: [] }).success).toBe(false)
  })
  it('readings outside the outline are counted and left out', () => {
    const some = coatingField(withReadings([...question.readings, { xMm: 5000, yMm: 300, value: value(3000) }]))
    expect(some.leftOut).toEqual([{ count: 1, why: 'outside the outline of the panel' }])
    expect(some.usedReadings).toBe(60)
  })
  it('100,000 rows are put together in squares and answered', () => {
    const many = Array.from({ length: 100_000 }, (_, at) => {
      const [x, y] = [(at * 7919) % 1000, (at * 104_729) % 700]
      return { xMm: x, yMm: y, value: value(115 + (at % 11) - 5 + dome(x, y)) }
    })
    const own = coatingField(coatingFieldInput.parse({ ...question, draws: 60, readings: many }))
    expect(own.usedReadings).toBeLessThanOrEqual(324)
    expect(own.fillerVolumeCm3.middle).toBeGreaterThan(80)
    expect(own.fillerVolumeCm3.middle).toBeLessThan(140)
  })
  it('can be stopped while it draws', () => {
    let asked = 0
    const stop = () => {
      asked += 1
      if (asked > 20) throw new ProblemError('cancelled', 'Stopped.')
    }
    expect(() => coatingField(question, stop)).toThrow(/Stopped/)
    expect(asked).toBe(21)
  })
})
