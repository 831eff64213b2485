import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { leanFromDiagonals } from '../../../electron/analysis/geometry/diagonals.ts'
import { wearOf } from '../../../electron/analysis/geometry/drum-wear.ts'
import { gapsOf } from '../../../electron/analysis/geometry/gaps.ts'
import { sheetFromTime } from '../../../electron/analysis/geometry/sheet-thickness.ts'
import { studCircleFrom } from '../../../electron/analysis/geometry/stud-circle.ts'
import { trilaterate } from '../../../electron/analysis/geometry/trilateration.ts'
import { pitchOfWelds } from '../../../electron/analysis/geometry/weld-pitch.ts'
import { chiSquareQuantile } from '../../../electron/analysis/statistics/chi-square.ts'
import { sheetThickness, studCircle } from '../../../shared-types/tape-measures.ts'

const list = join(import.meta.dirname, '../../../resources/lists/stud-patterns.json')
const patterns = JSON.parse(readFileSync(list, 'utf8')).patterns.map(
  ({ label, studs, diameterMm }: { label: string; studs: number; diameterMm: number }) => ({
    label,
    studs,
    diameterMm,
  }),
)
const studs = (count: number, spacings: [number, number][], goodToMm: number, from = patterns) =>
  studCircleFrom(
    studCircle.input.parse({
      studs: count,
      spacings: spacings.map(([mm, step]) => ({ mm, step })),
      goodToMm,
      patterns: from,
    }),
  )
const possible = (found: ReturnType<typeof studs>) =>
  found.patterns.filter((each) => each.possible).map(({ diameterMm }) => diameterMm)

describe('stud circle', () => {
  it.each([
    // 1 / sin(π k / n).
    [3, 1, 1.154701],
    [4, 1, Math.SQRT2],
    [5, 1, 1.701302],
    [5, 2, 1.051462],
    [6, 1, 2],
    [6, 2, 1.154701],
    [6, 3, 1],
    [8, 1, 2.613126],
    [8, 2, Math.SQRT2],
  ])('%i studs, %i apart: factor %d', (count, step, factor) => {
    expect(studs(count, [[100, step]], 1).diameterMm / 100).toBeCloseTo(factor, 6)
  })
  it.each([
    // Spacings of neighbours worked out apart from the program: d sin(π / n).
    [4, 95.25, 67.352],
    [4, 98, 69.296],
    [4, 100, 70.711],
    [4, 108, 76.368],
    [4, 130, 91.924],
    [5, 108, 63.481],
    [5, 112, 65.832],
    [5, 120.65, 70.916],
    [5, 127, 74.649],
    [5, 139.7, 82.114],
    [5, 165.1, 97.043],
    [5, 205, 120.496],
    [6, 139.7, 69.85],
  ])('%i studs on %d mm stand %d mm apart', (count, diameter, spacing) => {
    expect(studs(count, [[spacing, 1]], 1).diameterMm).toBeCloseTo(diameter, 2)
  })
  it('six spacings with a mean of 250 mm: 500 mm', () => {
    // Published worked example: 24.95, 25.05, 25.00, 25.10, 25.00 and 24.90 cm.
    const spacings = [249.5, 250.5, 250, 251, 250, 249].map((mm): [number, number] => [mm, 1])
    const found = studs(6, spacings, 1)
    expect(found.diameterMm).toBeCloseTo(500, 10)
    expect(found.standardMm).toBeCloseTo((2 * 1) / Math.sqrt(3) / Math.sqrt(6), 10)
    expect(found.spacingsAgree).toBe(true)
    expect(studs(6, [...spacings, [262, 1]], 1).spacingsAgree).toBe(false)
  })
  it('the rounded spacings of a shop chart are no exact patterns: nearest, with ties', () => {
    // 2 5/8, 2 3/4, 3 and 3 1/4 in stand in a chart for 4.5, 4.75, 5 and 5.5 in; worked out they give 4.466 to 5.529.
    const inches = (spacing: number) => studs(5, [[spacing * 25.4, 1]], 1.6).diameterMm / 25.4
    expect([2.625, 2.75, 3, 3.25].map((spacing) => inches(spacing).toFixed(3))).toEqual([
      '4.466',
      '4.679',
      '5.104',
      '5.529',
    ])
    expect(possible(studs(5, [[2.625 * 25.4, 1]], 1.6))).toEqual([114.3, 112, 115])
  })
  it('114.3 and 115 mm, 0.41 mm apart between neighbours, are a tie to a tape', () => {
    const found = studs(5, [[67.184, 1]], 0.5)
    expect(possible(found)).toEqual([114.3, 115])
    expect(found.words).toContain('are not told apart')
    expect(found.wouldDecideMm).toBeCloseTo(0.7, 2)
  })
  it('101.6 and 114.3 mm: told apart by a tape good to 2 mm between neighbours, not by one good to 8 mm', () => {
    // Common practice, no source.
    const two = patterns.filter(({ diameterMm }: { diameterMm: number }) => [101.6, 114.3].includes(diameterMm))
    for (const diameter of [101.6, 114.3]) {
      const spacing = diameter * Math.sin(Math.PI / 5)
      expect(possible(studs(5, [[spacing, 1]], 2, two))).toEqual([diameter])
      expect(possible(studs(5, [[spacing, 1]], 8, two))).toHaveLength(2)
    }
  })
  it('refuses nothing and going the long way round', () => {
    expect(() => studs(5, [[0, 1]], 1)).toThrow(/greater than nothing/)
    expect(() => studs(5, [[-3, 1]], 1)).toThrow(/greater than nothing/)
    expect(() => studs(5, [[60, 3]], 1)).toThrow(/shorter way round/)
  })
})

describe('drums', () => {
  const sizes = [
    { label: 'nine inches', nominalMm: 228.6, limitMm: 230.1 },
    { label: 'ten inches', nominalMm: 254, limitMm: 255.5 },
  ]
  const measure = (readingsMm: number[], goodToMm: number) => wearOf({ readingsMm, goodToMm, sizes, coverage: 0.95 })
  it('of 228.6 and 254 mm are told apart by a rule good to 10 mm', () => {
    // Common practice, no source.
    const told = (mm: number) =>
      measure([mm], 10)
        .sizes.filter((size) => size.possible)
        .map(({ label }) => label)
    expect(told(228.6)).toEqual(['nine inches'])
    expect(told(254)).toEqual(['ten inches'])
  })
  it('wear needs a finer tool before it is proven', () => {
    expect(measure([230.4], 1).sizes[0]?.limit.decision).toBe('cannot be proven')
    expect(measure([230.4], 0.05).sizes[0]?.limit.decision).toBe('outside')
    expect(measure([229.1], 0.05).sizes[0]).toMatchObject({
      limit: { decision: 'inside' },
      wearMm: expect.closeTo(0.5, 9),
    })
  })
  it('a disc wears thinner', () => {
    const disc = [{ label: 'disc', nominalMm: 12.7, limitMm: 11.4 }]
    const found = wearOf({ readingsMm: [11.2], goodToMm: 0.02, sizes: disc, coverage: 0.95 })
    expect(found.sizes[0]).toMatchObject({ limit: { decision: 'outside' }, wearMm: expect.closeTo(1.5, 9) })
  })
  it('refuses a limit that is the nominal size', () => {
    const wrong = [{ label: 'disc', nominalMm: 12, limitMm: 12 }]
    expect(() => wearOf({ readingsMm: [12], goodToMm: 1, sizes: wrong, coverage: 0.95 })).toThrow(/correct one/)
  })
})

describe('gaps', () => {
  const joint = (...gaps: number[]) => gaps.map((gapMm, at) => ({ atMm: 200 * at, gapMm }))
  it('a straight taper comes out as it is', () => {
    const found = gapsOf({
      left: joint(3, 3.5, 4, 4.5, 5),
      right: joint(4, 4, 4),
      goodToMm: 0.1,
      coverage: 0.95,
      of: 'gap',
    })
    expect(found.sides[0]).toMatchObject({ meanMm: 4, rangeMm: 2, taperMm: expect.closeTo(2, 12) })
    expect(found.sides[1]?.taperMm).toBeCloseTo(0, 12)
    expect(found.differenceMm).toBe(0)
    // Slope of five even places: s² = 10 steps², so 4 steps long 4 / √10 times u.
    expect(found.sides[0]?.expandedTaperMm).toBeCloseTo((1.959964 * (0.1 / Math.sqrt(3)) * 4) / Math.sqrt(10), 6)
    expect(found.words).toContain('right: taper 0 ± 0.2 mm, none shown')
    expect(found.words).not.toMatch(/pass|fail|good|bad/)
  })
  it('a panel that stands back is no gap below nothing', () => {
    const found = gapsOf({ left: joint(-1, 0, 1), right: null, goodToMm: 0.2, coverage: 0.95, of: 'flush' })
    expect(found.sides[0]).toMatchObject({ meanMm: expect.closeTo(0, 12), taperMm: expect.closeTo(2, 12) })
  })
  it('refuses negative gaps and one place', () => {
    const ask = (left: { atMm: number; gapMm: number }[]) => () =>
      gapsOf({ left, right: null, goodToMm: 1, coverage: 0.95, of: 'gap' })
    expect(ask(joint(1, -1, 2))).toThrow(/touch enter 0/)
    expect(ask([0, 0, 0].map((atMm) => ({ atMm, gapMm: 3 })))).toThrow(/where along the joint/)
  })
})

describe('diagonals', () => {
  const lean = (e: number, goodToMm = 0.5, limitMm: number | null = null) =>
    leanFromDiagonals({
      firstMm: Math.hypot(1400 + e, 2500),
      secondMm: Math.hypot(1400 - e, 2500),
      widthMm: 1400,
      lengthMm: 2500,
      goodToMm,
      limitMm,
      coverage: 0.95,
    })
  it.each([
    // Closed form, 1400 by 2500 mm.
    [1, 0.9772],
    [2, 1.9544],
    [5, 4.886],
    [10, 9.772],
  ])('%d mm of lean are %d mm of difference, and back', (e, difference) => {
    expect(lean(e).differenceMm).toBeCloseTo(difference, 4)
    expect(lean(e).leanMm).toBeCloseTo(e, 9)
  })
  it('a trapezium has equal diagonals, and the note says that they prove nothing', () => {
    const corners = [
      [0, 0],
      [1400, 0],
      [1300, 2500],
      [100, 2500],
    ] as const
    const across = (one: number, other: number) =>
      Math.hypot(...[0, 1].map((axis) => (corners[one]?.[axis] ?? 0) - (corners[other]?.[axis] ?? 0)))
    const found = leanFromDiagonals({
      firstMm: across(0, 2),
      secondMm: across(1, 3),
      widthMm: 1400,
      lengthMm: 2500,
      goodToMm: 1,
      limitMm: 3,
      coverage: 0.95,
    })
    expect(found.differenceMm).toBeCloseTo(0, 10)
    expect(found.limit?.decision).toBe('inside')
    expect(found.notes.join()).toContain('trapezium')
  })
  it('against a limit, three ways', () => {
    expect([lean(1, 0.5, 3), lean(3, 0.5, 3), lean(10, 0.5, 3)].map(({ limit }) => limit?.decision)).toEqual([
      'inside',
      'cannot be proven',
      'outside',
    ])
  })
  it('refuses a diagonal longer than both sides', () => {
    const wrong = {
      firstMm: 4000,
      secondMm: 2800,
      widthMm: 1400,
      lengthMm: 2500,
      goodToMm: 1,
      limitMm: null,
      coverage: 0.95,
    }
    expect(() => leanFromDiagonals(wrong)).toThrow(/again/)
  })
})

describe('trilateration', () => {
  const known = (
    distances: number[],
    places = [
      [0, 0],
      [1400, 0],
      [1400, 2500],
      [0, 2500],
    ],
  ) => places.map(([xMm = 0, yMm = 0], at) => ({ label: `point ${at}`, xMm, yMm, distanceMm: distances[at] ?? 0 }))
  it('as scipy 1.17.1 least_squares has it, with residuals and uncertainty', () => {
    const found = trilaterate({ from: known([1303.1, 1304.9, 1565.2, 1564]), uMm: 2 })
    expect(found.xMm).toBeCloseTo(698.46146472, 6)
    expect(found.yMm).toBeCloseTo(1100.47207875, 6)
    expect(found.uxMm).toBeCloseTo(2.02409407, 6)
    expect(found.uyMm).toBeCloseTo(1.15017288, 6)
    expect(found.misfit).toBeCloseTo(0.0608419, 6)
    expect(found.fits).toBe(true)
    const wanted = [-0.31367716, -0.16517561, -0.3142027, -0.13772414]
    for (const [at, { mm }] of found.residuals.entries()) expect(mm).toBeCloseTo(wanted[at] ?? 0, 5)
  })
  it('distances that cannot all be right do not fit', () => {
    const found = trilaterate({ from: known([1303.1, 1304.9, 1595.2, 1564]), uMm: 2 })
    expect(found.fits).toBe(false)
    expect(found.misfitLimit).toBeCloseTo(5.991, 3)
  })
  it('refuses known points on one line', () => {
    const line = [
      [0, 0],
      [100, 100],
      [300, 300],
    ]
    expect(() => trilaterate({ from: known([200, 150, 250], line), uMm: 1 })).toThrow(/mirrored place/)
  })
  it('quantiles of chi-square, scipy 1.17.1', () => {
    expect(chiSquareQuantile(0.95, 1)).toBeCloseTo(3.841458820694, 9)
    expect(chiSquareQuantile(0.95, 5)).toBeCloseTo(11.070497693516, 9)
    expect(chiSquareQuantile(0.95, 20)).toBeCloseTo(31.410432844231, 9)
  })
})

describe('sheet by ultrasound', () => {
  const sheet = (more: object) =>
    sheetFromTime(
      sheetThickness.input.parse({
        travelTimeUs: 0.33784,
        uTimeUs: 0,
        echoToEcho: true,
        paintUm: 0,
        uPaintUm: 0,
        nominalMm: null,
        ...more,
      }),
    )
  it('1.00 mm at 5920 m/s takes 0.33784 µs there and back', () => expect(sheet({}).thicknessMm).toBeCloseTo(1, 4))
  it('150 µm of paint adds 0.354 mm at 5900 m/s when it is taken for steel', () => {
    const found = sheet({ velocityMetalMs: 5900, paintUm: 150 })
    expect(found.paintErrorMm).toBeCloseTo(0.354, 6)
    // Through the paint: steel 0.9 mm and 150 µm of paint, times added up, come back as 0.9.
    const travelTimeUs = (2 * 0.9) / 5.9 + (2 * 0.15) / 2.5
    const through = sheet({ velocityMetalMs: 5900, paintUm: 150, uPaintUm: 10, echoToEcho: false, travelTimeUs })
    expect(through.thicknessMm).toBeCloseTo(0.9, 10)
    expect(through.expandedMm).toBeCloseTo(1.959964 * 0.01 * 2.36, 6)
    expect(through.notes.join()).toContain('end of ordinary contact probes')
  })
  it('loss from nominal with its uncertainty', () => {
    const found = sheet({ nominalMm: 1.25, uTimeUs: 0.01 })
    expect(found.lossPercent).toBeCloseTo(20, 2)
    expect(found.expandedLossPercent).toBeCloseTo((1.959964 * 0.01 * 5.92) / 2 / 0.0125, 4)
  })
  it('refuses no time, and paint that takes it all', () => {
    expect(() => sheet({ travelTimeUs: 0 })).toThrow(/microseconds/)
    expect(() => sheet({ echoToEcho: false, paintUm: 1000 })).toThrow(/Paint alone/)
  })
})

describe('weld pitch', () => {
  const row = [32, 31.5, 32.5, 32, 31, 33, 32, 32]
  const pitch = (pitchesMm: number[], goodToMm: number) =>
    pitchOfWelds({ pitchesMm, goodToMm, expected: { lowMm: 30, highMm: 34 }, coverage: 0.95 })
  it('mean and spread, inside what the sheet says', () => {
    const found = pitch(row, 0.5)
    expect(found.meanMm).toBe(32)
    // Squared deviations add up to 2.5 over 7.
    expect(found.standardDeviationMm).toBeCloseTo(Math.sqrt(2.5 / 7), 12)
    expect(found).toMatchObject({ standsOut: null, limit: { decision: 'inside' } })
    expect(pitch(row, 3).limit?.decision).toBe('cannot be proven')
  })
  it('names the pitch that stands out', () => expect(pitch([...row, 61], 0.5).standsOut).toBe(8))
  it('refuses nothing', () => expect(() => pitch([1, 0, 2], 1)).toThrow(/greater than nothing/))
})
