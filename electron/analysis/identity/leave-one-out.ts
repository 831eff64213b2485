import { type EvidenceItem, likelihoodOf } from './evidence.ts'
import { inRange, type Reasoner, SMALL, viewOf } from './reasoner.ts'
import { evenWeighing, product, type Weighing } from './weighing.ts'

const IMPOSSIBLE = Number.NEGATIVE_INFINITY

/** Logarithm of a sum of weights given by their logarithms. */
export function logSum(logs: readonly number[]): number {
  const greatest = Math.max(IMPOSSIBLE, ...logs)
  return greatest === IMPOSSIBLE
    ? greatest
    : greatest + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - greatest), 0))
}

/** Natural logarithms of the probability of the evidence; minus infinity where it is impossible. */
export interface Without {
  /** All of it. */
  readonly nothing: number
  /** By item, all the others. */
  readonly items: readonly number[]
  /** By doubtful fact in the order of the model, all of it as if the fact had never been written: its rules do not bite. */
  readonly doubts: readonly number[]
}

/**
 * The evidence without each item, and without each doubtful fact. One pass up and one down for all of them: the derivative of the total by a value does not hold that value's own weight, so the
 * total without an item is the sum of the derivatives, each by its value's weight without the item (Darwiche, J. ACM 50
 * (2003) 280-305). What comes out too small for that is weighed on its own.
 * @param restricted lets through the builds of a statement, or of its opposite.
 */
export function withoutEach(reasoner: Reasoner, items: readonly EvidenceItem[], restricted: Weighing): Without {
  const { compiled, passes, priors } = reasoner
  const doubts = [...compiled.model.doubtAt.values()]
  const evidence = product(likelihoodOf(compiled, items), restricted)
  const whole: number[] = []
  const logs = items.map((): number[] => [])
  const doubtLogs = doubts.map((): number[] => [])
  const small = new Set<EvidenceItem>()
  const smallDoubts = new Set<number>()
  for (const prior of priors) {
    const { weighing, logFactor } = inRange(reasoner, product(prior.weighing, evidence))
    const logOf = (total: number) => Math.log((prior.share * total) / prior.total) - logFactor
    whole.push(logOf(passes.slopesAsWell(weighing)))
    const factor = Math.exp(logFactor / weighing.values.length)
    items.forEach((item, at) => {
      const total = totalWithout(reasoner, items, item, { prior: prior.weighing, restricted, factor })
      if (total > SMALL) logs[at]?.push(logOf(total))
      else small.add(item)
    })
    doubts.forEach((variable, at) => {
      const total = passes.ofValue(weighing, variable, FAILS)
      if (total > SMALL) doubtLogs[at]?.push(logOf(total))
      else smallDoubts.add(variable)
    })
  }
  const under = (some: readonly EvidenceItem[], also: Weighing) =>
    viewOf(reasoner, some, also)?.logLikelihood ?? IMPOSSIBLE
  return {
    nothing: logSum(whole),
    items: items.map((item, at) =>
      small.has(item)
        ? under(
            items.filter((other) => other !== item),
            restricted,
          )
        : logSum(logs[at] ?? []),
    ),
    doubts: doubts.map((variable, at) =>
      smallDoubts.has(variable)
        ? under(items, product(restricted, neverWritten(reasoner, variable)))
        : logSum(doubtLogs[at] ?? []),
    ),
  }
}

/** Position of `fails` among the two values of a doubtful fact. */
const FAILS = 0

function neverWritten({ compiled }: Reasoner, doubt: number): Weighing {
  const even = evenWeighing(compiled)
  return { ...even, values: even.values.map((values, at) => (at === doubt ? Float64Array.of(1, 0) : values)) }
}

interface Weights {
  readonly prior: Weighing
  readonly restricted: Weighing
  /** What every value of every variable was multiplied by. */
  readonly factor: number
}

/** Total weight without an item, from the derivatives of the last pass. */
function totalWithout(
  { compiled, passes }: Reasoner,
  items: readonly EvidenceItem[],
  { id, variable, table }: EvidenceItem,
  { prior, restricted, factor }: Weights,
): number {
  const beside = items.filter(
    (other) => other.id !== id && other.table === table && (table !== null || other.variable === variable),
  )
  const of = ({ values, labels }: Weighing) => (table === null ? values[variable] : labels[table]) as Float64Array
  const [own, open] = [of(prior), of(restricted)]
  const { classAt, labelAt } = compiled.circuit
  const classOf = compiled.classes[variable]?.classOf
  let total = 0
  for (let cell = 0; cell < own.length; cell++) {
    const input =
      table === null ? (classAt[variable] as number) + (classOf?.[cell] as number) : (labelAt[table] as number) + cell
    const slope = passes.byInput[input] as number
    if (slope === 0) continue
    let weight = (own[cell] as number) * (open[cell] as number) * slope
    for (const { likelihood } of beside) weight *= likelihood[cell] as number
    total += weight
  }
  return table === null ? total * factor : total
}
