import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type CovarianceStructure,
  covariance,
  distanceTo,
  errorVariance,
} from '../../electron/analysis/coating/covariance.ts'
import { structureNumbers, writeStructures } from '../../electron/analysis/coating/kernel-structures.ts'
import { krigeNearest } from '../../electron/analysis/coating/nearest-kriging.ts'
import { nodeNeighbours } from '../../electron/analysis/coating/node-neighbours.ts'
import { nodeWeights, roomOfWeights } from '../../electron/analysis/coating/node-weights.ts'
import { krige, krigingSystem } from '../../electron/analysis/coating/ordinary-kriging.ts'
import { KernelMemory } from '../../electron/analysis/kernel/kernel-memory.ts'
import { normalDraw, seededDraw, xoshiro128 } from '../../electron/analysis/sampling/seeded-draws.ts'
import { factorInPlace, inverseFromLower, solveLowerTogether } from '../../electron/analysis/statistics/cholesky.ts'
import { QuickNormals } from '../../electron/analysis/statistics/quick-normals.ts'

/** The kernel does in blocks and pairs what is written here plainly, one number after the other, from the textbooks. */
type Matrix = number[][]

/** Gauss's elimination with pivots by rows: x of A x = b. */
function solved(matrix: Matrix, side: readonly number[]): number[] {
  const rows = matrix.map((row, at) => [...row, side[at] as number])
  const n = rows.length
  for (let column = 0; column < n; column += 1) {
    let best = column
    for (let row = column; row < n; row += 1)
      if (Math.abs(rows[row]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = row
    const chosen = rows[best] as number[]
    rows[best] = rows[column] as number[]
    rows[column] = chosen
    for (const row of rows) {
      if (row === chosen) continue
      const share = (row[column] as number) / (chosen[column] as number)
      for (let at = column; at <= n; at += 1) row[at] = (row[at] as number) - share * (chosen[at] as number)
    }
  }
  return rows.map((row, at) => (row[n] as number) / (row[at] as number))
}

const product = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, at) => sum + value * (other[at] as number), 0)

/** The bordered system of ordinary kriging (Isaaks and Srivastava, An Introduction to Applied Geostatistics, 1989, 12). */
function bordered(between: Matrix, toTarget: readonly number[], read: readonly number[], sill: number) {
  const n = read.length
  const matrix = [...between.map((row) => [...row, 1]), [...new Array<number>(n).fill(1), 0]]
  const weights = solved(matrix, [...toTarget, 1])
  return { value: product(weights.slice(0, n), read), variance: sill - product(weights, [...toTarget, 1]) }
}

const models = ['nugget', 'error', 'spherical', 'exponential', 'matern 3/2'] as const
const structuresOf = fc
  .array(
    fc.record({
      model: fc.constantFrom(...models),
      sill: fc.double({ min: 0.2, max: 3, noNaN: true }),
      range: fc.double({ min: 20, max: 400, noNaN: true }),
    }),
    { minLength: 1, maxLength: 3 },
  )
  .map((some): CovarianceStructure[] => [
    ...some,
    { model: 'error', sill: 0.05, range: 1 },
    { model: 'exponential', sill: 0.5, range: 120 },
  ])

const scattered = (count: number, seed: string) => {
  const draw = seededDraw(seed)
  return {
    x: Float64Array.from({ length: count }, () => 1000 * draw()),
    y: Float64Array.from({ length: count }, () => 700 * draw()),
  }
}

const relative = (found: number, expected: number): number =>
  Math.abs(found - expected) / Math.max(1e-3, Math.abs(expected))

describe('the kernel agrees to 1e-10 with the same written plainly:', () => {
  it('covariances of all models at any distance, nought and far ones included', () => {
    fc.assert(
      fc.property(
        structuresOf,
        fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 9 }),
        (structures, distances) => {
          const [n, targets] = [distances.length, 4]
          const memory = new KernelMemory(structureNumbers(structures) + 6 * n + 8 + 4 * (n + 3), 7)
          const model = memory.numbers(structureNumbers(structures))
          writeStructures(model, structures)
          const [x, y, targetX, targetY] = [memory.numbers(n), memory.numbers(n), memory.numbers(4), memory.numbers(4)]
          x.set(distances)
          const out = memory.numbers(4 * (n + 3))
          out.fill(7)
          memory.kernel.covarianceStrips(
            model.byteOffset,
            structures.length,
            x.byteOffset,
            y.byteOffset,
            n,
            n + 3,
            targetX.byteOffset,
            targetY.byteOffset,
            1,
            memory.numbers(4 * n).byteOffset,
            out.byteOffset,
          )
          distances.forEach((distance, row) => {
            const apart = Math.sqrt(distance * distance)
            for (let t = 0; t < targets; t += 1)
              expect(Math.abs((out[row * 4 + t] as number) - covariance(structures, apart))).toBeLessThan(1e-13)
          })
          expect(out.subarray(4 * n)).toEqual(new Float64Array(12))
        },
      ),
    )
  })

  it('factors, solutions and inverses of any size, across the edges of its blocks', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 23 }), fc.integer({ min: 1, max: 7 }), fc.string(), (n, width, seed) => {
        const normal = normalDraw(seededDraw(seed))
        const root = Array.from({ length: n }, () => Array.from({ length: n }, normal))
        const matrix = root.map((one, row) =>
          root.map((other, column) => product(one, other) + (row === column ? 1 : 0)),
        )
        const factor = Float64Array.from(matrix.flat())
        expect(factorInPlace(factor, n)).toBe(true)
        const lower = (row: number): number[] => Array.from(factor.subarray(row * n, (row + 1) * n))
        const columns = Float64Array.from({ length: n * width }, normal)
        const x = columns.slice()
        solveLowerTogether(factor, n, x, width)
        const inverse = inverseFromLower(factor, n)
        for (let row = 0; row < n; row += 1) {
          expect(lower(row).slice(row + 1)).toEqual(new Array(n - row - 1).fill(0))
          for (let column = 0; column < n; column += 1)
            expect(relative(product(lower(row), lower(column)), matrix[row]?.[column] as number)).toBeLessThan(1e-10)
          for (let side = 0; side < width; side += 1) {
            const own = Array.from({ length: n }, (_, k) => x[k * width + side] as number)
            expect(Math.abs(product(lower(row), own) - (columns[row * width + side] as number))).toBeLessThan(1e-10)
          }
          const unit = solved(
            matrix,
            Array.from({ length: n }, (_, at) => (at === row ? 1 : 0)),
          )
          for (const [at, value] of unit.entries())
            expect(Math.abs((inverse[row * n + at] as number) - value)).toBeLessThan(1e-10)
        }
      }),
      { numRuns: 40 },
    )
  })

  it('quadratic forms and products', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 41 }), fc.string(), (n, seed) => {
        const normal = normalDraw(seededDraw(seed))
        const memory = new KernelMemory(n * n + 2 * n, 3)
        const [matrix, one, other] = [memory.numbers(n * n), memory.numbers(n), memory.numbers(n)]
        for (const numbers of [one, other]) numbers.set(Float64Array.from({ length: n }, normal))
        for (let row = 0; row < n; row += 1)
          for (let column = 0; column <= row; column += 1) {
            matrix[row * n + column] = normal()
            matrix[column * n + row] = matrix[row * n + column] as number
          }
        const { kernel } = memory
        const plain = Array.from(one)
        const form = plain.reduce(
          (sum, value, row) => sum + value * product(plain, Array.from(matrix.subarray(row * n, (row + 1) * n))),
          0,
        )
        expect(Math.abs(kernel.quadraticForm(matrix.byteOffset, one.byteOffset, n) - form)).toBeLessThan(1e-10)
        expect(
          Math.abs(kernel.dot(one.byteOffset, other.byteOffset, n) - product(plain, Array.from(other))),
        ).toBeLessThan(1e-10)
      }),
    )
  })

  it('ordinary kriging of all readings and of the nearest, errors of single readings included', () => {
    fc.assert(
      fc.property(
        structuresOf,
        fc.integer({ min: 1, max: 14 }),
        fc.integer({ min: 1, max: 9 }),
        fc.string(),
        (structures, n, count, seed) => {
          const places = scattered(n, `${seed} readings`)
          const targets = scattered(count, `${seed} targets`)
          const draw = seededDraw(seed)
          const data = {
            places,
            values: Float64Array.from({ length: n }, draw),
            readingVariance: Float64Array.from({ length: n }, () => 0.1 * draw()),
          }
          const size = Math.min(5, n)
          const near = krigeNearest({ data, structures }, targets, size)
          const all = krige(krigingSystem(data, structures), targets)
          const sill = covariance(structures, 0)
          const own = sill + errorVariance(structures)
          for (let t = 0; t < count; t += 1) {
            const [x, y] = [targets.x[t] as number, targets.y[t] as number]
            const order = Array.from({ length: n }, (_, at) => at).sort(
              (one, other) => distanceTo(places, one, x, y) - distanceTo(places, other, x, y),
            )
            for (const [used, found] of [
              [order, all],
              [order.slice(0, size), near],
            ] as const) {
              const between = used.map((one) =>
                used.map((other) =>
                  one === other
                    ? own + (data.readingVariance[one] as number)
                    : covariance(
                        structures,
                        distanceTo(places, one, places.x[other] as number, places.y[other] as number),
                      ),
                ),
              )
              const expected = bordered(
                between,
                used.map((one) => covariance(structures, distanceTo(places, one, x, y))),
                used.map((one) => data.values[one] as number),
                sill,
              )
              expect(relative(found.values[t] as number, expected.value)).toBeLessThan(1e-10)
              expect(relative(found.variances[t] as number, expected.variance)).toBeLessThan(1e-10)
            }
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  it('weights of nodes from earlier places, also where there are few', () => {
    const [readings, nodes] = [scattered(2, 'few'), scattered(9, 'nodes')]
    const neighbours = nodeNeighbours(readings, nodes, 4)
    const room = roomOfWeights(2, 9, 4)
    const { weights, deviations, forRange } = nodeWeights(
      new KernelMemory(room.numbers, room.takings),
      readings,
      nodes,
      neighbours,
    )
    forRange(150)
    const place = (at: number) =>
      at < 2
        ? ([readings.x[at], readings.y[at]] as number[])
        : ([nodes.x[neighbours.order[at - 2] as number], nodes.y[neighbours.order[at - 2] as number]] as number[])
    const alike = (one: number, other: number): number => {
      const [[a, b], [c, d]] = [place(one), place(other)] as [[number, number], [number, number]]
      return covariance([{ model: 'matern 3/2', sill: 1, range: 150 }], Math.hypot(a - c, b - d))
    }
    for (let at = 0; at < 9; at += 1) {
      const used = Array.from(neighbours.before.subarray(4 * at, 4 * at + 4)).filter((earlier) => earlier >= 0)
      expect(used.length).toBe(Math.min(4, 2 + at))
      const toNode = used.map((earlier) => alike(earlier, 2 + at))
      const expected = solved(
        used.map((one) => used.map((other) => alike(one, other) + (one === other ? 1e-6 : 0))),
        toNode,
      )
      for (let slot = 0; slot < 4; slot += 1)
        expect(Math.abs((weights[4 * at + slot] as number) - (expected[slot] ?? 0))).toBeLessThan(1e-10)
      expect(deviations[at]).toBeCloseTo(Math.sqrt(1 - product(expected, toNode)), 10)
    }
  })

  it('a node of the field from its earlier places in every draw', () => {
    const [draws, stride] = [5, 7]
    const memory = new KernelMemory(60, 4)
    const [field, sum] = [memory.singles(4 * stride), memory.numbers(stride)]
    const [before, weights] = [memory.wholes(3), memory.numbers(3)]
    field.set(Array.from({ length: 3 * stride }, (_, at) => Math.fround(Math.sin(at))))
    before.set([2, 0, -1])
    weights.set([0.7, -0.2, 9])
    sum.set([1, -1, 0.5, 2, 3])
    const expected = Array.from({ length: draws }, (_, d) =>
      Math.fround(0.3 * (sum[d] as number) + 0.7 * (field[2 * stride + d] as number) - 0.2 * (field[d] as number)),
    )
    memory.kernel.drawNode(
      field.byteOffset,
      stride,
      draws,
      before.byteOffset,
      weights.byteOffset,
      3,
      0.3,
      sum.byteOffset,
      3,
    )
    expect(Array.from(field.subarray(3 * stride, 3 * stride + draws))).toEqual(expected)
  })

  it('words of xoshiro128**, by the normal numbers that come of the first of them', () => {
    const draw = seededDraw('words')
    const word = (): number => Math.floor(draw() * 0x100000000)
    const next = xoshiro128([word(), word(), word(), word() | 1])
    const { one } = new QuickNormals(seededDraw('words'))
    /** Layers of equal area under the curve: their ends by the recursion of Marsaglia and Tsang, 2000. */
    const ends = [9.91256303526217e-3 / Math.exp(-0.5 * 3.442619855899 ** 2), 3.442619855899]
    while (ends.length < 128) {
      const last = ends.at(-1) as number
      ends.push(Math.sqrt(-2 * Math.log(9.91256303526217e-3 / last + Math.exp(-0.5 * last * last))))
    }
    for (let at = 0; at < 40; at += 1) {
      const layer = next() & 127
      const place = (next() - 0x80000000) / 0x80000000
      if (Math.abs(place) >= (ends[layer + 1] ?? 0) / (ends[layer] as number)) break
      expect(one()).toBeCloseTo(place * (ends[layer] as number), 12)
    }
  })
})
