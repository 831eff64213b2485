import { randomInt } from 'node:crypto'
import { init } from 'z3-solver'
import { compileModel } from '../../../electron/analysis/identity/compile-circuit.ts'
import { ConflictFinder } from '../../../electron/analysis/identity/conflicts.ts'
import { certainFacts } from '../../../electron/analysis/identity/hard-facts.ts'
import { indexModel } from '../../../electron/analysis/identity/index-model.ts'
import { countLegalBuilds } from '../../../electron/analysis/identity/legal-builds.ts'
import { mixedMarginals } from '../../../electron/analysis/identity/posterior.ts'
import { makeReasoner, type Reasoner, type View, viewOf } from '../../../electron/analysis/identity/reasoner.ts'
import { valueOfInformation } from '../../../electron/analysis/identity/value-of-information.ts'
import type { IdentityModel } from '../../../shared-types/identity-model.ts'
import { type CarLineSize, carLineModel } from '../../analysis/identity/car-line-models.ts'
import { hardReadings, type Judge, makeJudge } from '../../analysis/identity/outside-judge.ts'

interface Row {
  readonly what: string
  readonly ours: string | number
  readonly reference: string | number | null
  readonly ratio: string | number | null
  readonly aim: string | number
}

/** Processor time of this process, ms. */
function processorMs(): number {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN

/** Median processor time of one call, ms, over enough calls to be measured at all. */
function medianMs(act: () => unknown, rounds: number, calls: number): number {
  for (let warm = 0; warm < 20; warm++) act()
  return median(
    Array.from({ length: rounds }, () => {
      const began = processorMs()
      for (let call = 0; call < calls; call++) act()
      return (processorMs() - began) / calls
    }),
  )
}

interface Measured {
  readonly compileMs: number
  readonly marginalsMs: number
  readonly worthMs: number
  readonly nsPerEdge: number
  readonly edges: number
  readonly builds: bigint
}

const viewed = (reasoner: Reasoner): View => {
  const view = viewOf(reasoner, [])
  if (view === null) throw new Error('Nothing is possible.')
  return view
}

function measure(source: IdentityModel): Measured {
  const began = processorMs()
  const compiled = compileModel(indexModel(source))
  const compileMs = processorMs() - began
  const reasoner = makeReasoner(compiled)
  const view = viewed(reasoner)
  const [account] = view.accounts
  if (account === undefined) throw new Error('There is no account.')
  const edges = reasoner.passes.edges
  const passesMs = medianMs(() => reasoner.passes.totalAndSlopes(account.weighing), 9, 40)
  return {
    compileMs,
    edges,
    builds: countLegalBuilds(compiled),
    nsPerEdge: (passesMs * 1e6) / 2 / edges,
    marginalsMs: medianMs(() => mixedMarginals(reasoner, viewed(reasoner)), 9, 20),
    worthMs: medianMs(
      () => valueOfInformation(reasoner, view, { about: 'variable', variable: 'date' }, new Set()),
      5,
      2,
    ),
  }
}

const range = (values: readonly number[]): string =>
  `${median(values).toPrecision(3)} (${Math.min(...values).toPrecision(3)} to ${Math.max(...values).toPrecision(3)})`

const least = (builds: readonly bigint[]): string => Math.min(...builds.map(Number)).toExponential(1)

function rowsFor(size: CarLineSize, sheets: number, aims: readonly [string, string, string]): readonly Row[] {
  const first = randomInt(1e9)
  process.stderr.write(`  seeds ${first} to ${first + sheets - 1}\n`)
  // One sheet apart warms the compiler of the language up; a program is warm when it reads its second sheet.
  measure(carLineModel(size, first + sheets))
  const found = Array.from({ length: sheets }, (_, at) => measure(carLineModel(size, first + at)))
  const of = (pick: (each: Measured) => number) => range(found.map(pick))
  const sheet = `${size.variables} variables, ${size.rules} rules, at least ${least(found.map(({ builds }) => builds))} builds`
  const row = (what: string, ours: string, aim: string): Row => ({
    what: `${sheet}: ${what}`,
    ours,
    reference: null,
    ratio: null,
    aim,
  })
  return [
    row(
      'compile, ms',
      of(({ compileMs }) => compileMs),
      aims[0],
    ),
    row(
      'all marginals, ms',
      of(({ marginalsMs }) => marginalsMs),
      aims[1],
    ),
    row(
      'worth of all tells for the date, ms',
      of(({ worthMs }) => worthMs),
      aims[2],
    ),
    row(
      'ns per edge and pass',
      of(({ nsPerEdge }) => nsPerEdge),
      'at most 10',
    ),
    row(
      'edges',
      of(({ edges }) => edges),
      '-',
    ),
  ]
}

/** Sheets of 60 variables and 600 rules. */
export const carLines = (): readonly Row[] =>
  rowsFor({ variables: 60, rules: 600, dates: 60 }, 9, ['under 1000', 'under 2', 'under 40'])

/** Sheets of 86 variables and 2,000 rules. */
export const largeCarLines = (): readonly Row[] =>
  rowsFor({ variables: 86, rules: 2000, dates: 60 }, 5, ['under 5000', 'under 10', '-'])

/** A minimal conflict by the solver: a core, then one item after the other tried out. */
async function byJudge(judge: Judge, model: IdentityModel, certain: ReturnType<typeof hardReadings>): Promise<number> {
  const core = await judge.core(model, certain)
  const asked = judge.about(model, certain)
  const began = performance.now()
  await judge.core(model, certain)
  let left = [...(core ?? [])]
  for (const id of core ?? []) {
    const fewer = left.filter((other) => other !== id)
    if (!(await asked(fewer))) left = fewer
  }
  return performance.now() - began
}

/** One minimal conflict among 600 rules and 12 hard readings, against the SMT solver z3 on the same question. */
export async function minimalConflict(): Promise<readonly Row[]> {
  const judge = await makeJudge(init)
  const first = randomInt(1e9)
  process.stderr.write(`  seeds from ${first}\n`)
  const ours: number[] = []
  const theirs: number[] = []
  for (let seed = first; ours.length < 15; seed++) {
    const model = carLineModel({ variables: 60, rules: 600, dates: 60 }, seed)
    const certain = hardReadings(model, 12, seed)
    const indexed = indexModel(model)
    const facts = certainFacts(indexed, certain)
    if (new ConflictFinder(indexed, facts).one() === null) continue
    ours.push(medianMs(() => new ConflictFinder(indexed, facts).one(), 5, 4))
    theirs.push(await byJudge(judge, model, certain))
  }
  judge.end()
  return [
    {
      what: 'a minimal conflict among 600 rules and 12 readings, ms (rules entered anew each time), against z3',
      ours: range(ours),
      reference: range(theirs),
      ratio: median(ours.map((own, at) => own / (theirs[at] ?? Number.NaN))),
      aim: 'under 10; at most 0.25',
    },
  ]
}
