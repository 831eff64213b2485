import fc from 'fast-check'
import { expect, it } from 'vitest'
import { z } from 'zod'
import { answer } from '../../electron/doors/answer.ts'
import { requests } from '../../shared-types/contract.ts'
import { problem } from '../../shared-types/problem.ts'
import { echoes, noProgram } from './stand-in.ts'

const answered = z.union([z.strictObject({ value: z.unknown() }), z.strictObject({ problem })])
const names = Object.keys(requests) as (keyof typeof requests)[]

/** Values no field expects, among them what reaches for prototypes and what is far too large. */
const hostileValue = fc.oneof(
  fc.anything({
    withNullPrototype: true,
    withBigInt: true,
    withDate: true,
    withMap: true,
    withSparseArray: true,
    withTypedArray: true,
  }),
  fc.constantFrom<unknown>(
    'x'.repeat(200_000),
    Number.NaN,
    Number.POSITIVE_INFINITY,
    -1,
    2 ** 53,
    '',
    '\u0000',
    '\uD800',
    '\u202E',
  ),
  fc.constantFrom<unknown>('<script>', '=1+1', '/Type /Catalog', '../../etc/passwd', "'; DROP TABLE findings; --"),
  fc.constant(Array.from({ length: 6_000 }, () => ({}))),
  fc.constant(JSON.parse('{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}')),
)
const hostileName = fc.oneof(
  fc.constantFrom('__proto__', 'constructor', 'prototype', 'toString', 'commandId'),
  fc.string(),
)

/** Something near what a field wants, so that requests come past the first check now and then. */
const likelyValue = fc.oneof(
  fc.uuid(),
  fc.constantFrom<unknown>(null, true, false, 1, 50, 'A4', 'hood', 'coupe', 'left', 'us', 'outside only', [], {}, ''),
)

/** An input with the fields of its request, each fitting, hostile or missing, and perhaps some it does not know. */
const requestWithInput = fc.constantFrom(...names).chain((name) => {
  const fields = Object.keys(requests[name].input.shape)
  const known = fc.record(Object.fromEntries(fields.map((field) => [field, fc.oneof(likelyValue, hostileValue)])), {
    requiredKeys: [],
  })
  const extra = fc.oneof(
    { weight: 3, arbitrary: fc.constant([]) },
    { weight: 1, arbitrary: fc.array(fc.tuple(hostileName, hostileValue), { maxLength: 3 }) },
  )
  const input = fc.tuple(known, extra).map(([own, more]) => {
    const whole: object = { ...own }
    for (const [field, value] of more as [string, unknown][]) {
      Object.defineProperty(whole, field, { value, enumerable: true, configurable: true, writable: true })
    }
    return whole
  })
  return fc.tuple(
    fc.constant(name),
    fc.oneof({ weight: 9, arbitrary: input as fc.Arbitrary<unknown> }, { weight: 1, arbitrary: hostileValue }),
  )
})

it('10,000 generated requests cross as a value or a typed problem, and nothing else happens', {
  timeout: 240_000,
}, async () => {
  const seen = { values: 0, problems: 0, names: new Set<string>() }
  await fc.assert(
    fc.asyncProperty(requestWithInput, async ([name, input]) => {
      const said = answered.parse(await answer(noProgram, echoes, name, input))
      seen.names.add(name)
      if ('value' in said) {
        // What came through is exactly what the schema takes: nothing was let past unchecked.
        expect(requests[name].input.safeParse((said.value as { input: unknown }).input).success).toBe(true)
        seen.values += 1
      } else {
        expect(said.problem.code).toBe('input-refused')
        expect(said.problem.message.length).toBeLessThan(600)
        seen.problems += 1
      }
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined()
    }),
    { numRuns: 10_000, seed: 20_260_514 },
  )
  expect(seen.values + seen.problems).toBe(10_000)
  expect(seen.values).toBeGreaterThan(100)
  expect(seen.problems).toBeGreaterThan(1_000)
  expect([...seen.names].sort()).toEqual([...names].sort())
})
