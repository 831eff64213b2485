import { describe, expect, it } from 'vitest'
import { coatingField } from '../../../electron/analysis/coating/coating-field.ts'
import { sectionAlongLine } from '../../../electron/analysis/coating/section-along-line.ts'
import type { CoatingFieldInput } from '../../../shared-types/coating.ts'
import { coatingSectionInput, type SectionLine } from '../../../shared-types/coating-section.ts'
import { panelQuestion } from './panel-question.ts'
import { heldAlongLines } from './section-study.ts'

const patch = (x: number, y: number): number => (Math.hypot(x - 700, y - 350) < 160 ? 900 : 0)
const patched = panelQuestion({ fillerUm: patch, filmUm: 120, readings: 60 })
const across: SectionLine = { from: { xMm: 0, yMm: 350 }, to: { xMm: 1000, yMm: 350 }, nearMm: 50 }
const cut = (field: CoatingFieldInput, line: Partial<SectionLine> = {}) =>
  sectionAlongLine(coatingSectionInput.parse({ field, line: { ...across, ...line } }))

describe('a panel cut along a line', () => {
  const section = cut(patched)
  const at = (alongMm: number) =>
    section.places.reduce((near, place) =>
      Math.abs(place.alongMm - alongMm) < Math.abs(near.alongMm - alongMm) ? place : near,
    )
  it('runs from the first end to the second and shows paint beside the patch and filler in it', () => {
    expect(section.lengthMm).toBe(1000)
    expect(section.places.at(0)?.alongMm).toBe(0)
    expect(section.places.at(-1)?.alongMm).toBe(1000)
    expect(at(100).um?.middle).toBeLessThan(140)
    // 900 µm of filler under 120 µm of film lie there.
    expect(at(700).um?.low).toBeLessThan(1020)
    expect(at(700).um?.low).toBeGreaterThan(300)
    expect(at(700).um?.high).toBeGreaterThan(1020)
    for (const { um } of section.places) {
      expect(um?.low ?? 0).toBeLessThanOrEqual(um?.middle ?? -1)
      expect(um?.middle ?? 0).toBeLessThanOrEqual(um?.high ?? -1)
    }
  })
  it('agrees with the map of the same question at the places both have', () => {
    const map = coatingField(patched)
    const nodes = patched.nodes.flatMap(({ xMm, yMm }, node) => (Math.abs(yMm - 350) < 25 ? [{ xMm, node }] : []))
    const differences = nodes.map(({ xMm, node }) =>
      Math.abs((at(xMm).um?.middle ?? 0) - (map.thicknessUm.middle[node] ?? 0)),
    )
    // Both are medians of 199 draws: in the patch, where a draw's deviation is some 200 µm, they differ by chance.
    expect(nodes.length).toBeGreaterThan(15)
    expect(differences.toSorted((one, other) => one - other)[Math.floor(nodes.length / 2)]).toBeLessThan(10)
    expect(Math.max(...differences)).toBeLessThan(200)
  })
  it('gives paint alone the quantiles of its lognormal spread (NIST/SEMATECH e-Handbook, 1.3.6.7.1: 1.645 at 95 %)', () => {
    const bare = cut({ ...panelQuestion({ fillerUm: () => 0, filmUm: 120, readings: 80 }), reference: null })
    const { low, middle, high } = bare.paintUm
    expect(Math.log(high / middle)).toBeCloseTo(Math.log(middle / low), 10)
    const place = bare.places[40]?.um
    expect(place?.middle ?? 0).toBeCloseTo(middle, 0)
    expect((place?.high ?? 0) / high).toBeCloseTo(1, 1)
    expect((place?.low ?? 0) / low).toBeCloseTo(1, 2)
    // The film was laid with a deviation of 0.08 and read by a gauge of ±(2 µm + 3 %), k = 2: 0.08 to 0.09 in all.
    const deviation = Math.log(high / middle) / 1.645
    expect(deviation).toBeGreaterThan(0.05)
    expect(deviation).toBeLessThan(0.13)
  })
  it('shows the readings near it where their feet fall, and those beyond the gauge as more', () => {
    const reading = (xMm: number, yMm: number, value: CoatingFieldInput['readings'][number]['value']) => ({
      xMm,
      yMm,
      value,
    })
    const own = {
      ...patched,
      readings: [
        reading(300, 390, { kind: 'value', um: 118 }),
        reading(700, 350, { kind: 'more than', um: 2000 }),
        reading(500, 401, { kind: 'value', um: 121 }),
        reading(100, 340, { kind: 'no reading' }),
        reading(50, 345, { kind: 'value', um: 125 }),
      ],
    }
    expect(cut(own).readings).toEqual([
      { reading: 4, alongMm: 50, besideMm: 5, um: 125, orMore: false },
      { reading: 0, alongMm: 300, besideMm: 40, um: 118, orMore: false },
      { reading: 1, alongMm: 700, besideMm: 0, um: 2000, orMore: true },
    ])
    // A 3-4-5 triangle: the foot of (300, 390) on the line from (0, 0) to (800, 600) lies 474 mm along, 132 mm beside it.
    const slanting = cut(own, { from: { xMm: 0, yMm: 0 }, to: { xMm: 800, yMm: 600 }, nearMm: 133 }).readings
    expect(slanting.find(({ reading: number }) => number === 0)).toMatchObject({
      alongMm: expect.closeTo(474, 6),
      besideMm: expect.closeTo(132, 6),
    })
  })
  it('says nothing where the panel was not assessed, and how much of the line that is', () => {
    const nodes = patched.nodes.map((node) => (node.xMm > 380 && node.xMm < 620 ? { ...node, readable: false } : node))
    const gap = cut({ ...patched, nodes }, { to: { xMm: 1200, yMm: 350 } })
    const blank = gap.places.filter(({ um }) => um === null).map(({ alongMm }) => alongMm)
    expect(blank.some((along) => along > 450 && along < 550)).toBe(true)
    expect(blank.some((along) => along > 1050)).toBe(true)
    expect(gap.places.find(({ alongMm }) => alongMm > 200)?.um).not.toBeNull()
    expect(gap.words).toMatch(/About 4[0-9]{2} of 1\u202f200 mm were not assessed/)
    const beside = cut(patched, { from: { xMm: 0, yMm: 2000 }, to: { xMm: 500, yMm: 2000 } })
    expect(beside.places.every(({ um }) => um === null)).toBe(true)
    expect(beside.words).toMatch(/Nothing along this line was assessed/)
  })
  it('refuses a line without length, and says what to do', () => {
    expect(() => cut(patched, { to: { xMm: 3, yMm: 350 } })).toThrow(/move one of them further away/)
  })
})

describe('the band of a cut', () => {
  const held = heldAlongLines('section short', 40, 20)
  it('holds the thickness of simulated panels at nine places of ten, on paint and on filler', () => {
    // Places of one panel go together: forty panels leave the share of places uncertain by some 0.03.
    expect(held.all).toBeGreaterThan(0.84)
    expect(held.all).toBeLessThan(0.97)
    expect(held.onFiller).toBeGreaterThan(0.72)
  })
  it('and not when it is drawn to a third of its width, so that the run can fail', () => {
    expect(held.third).toBeLessThan(0.7)
  })
})
