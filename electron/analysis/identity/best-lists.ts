import { type Circuit, PRODUCT, SUM_OF_INPUTS } from './circuit.ts'

/** One way through the circuit: its weight, and for each variable and table the choice made. */
export interface Way {
  readonly weight: number
  /** Inputs chosen, each with which of its members (best first). */
  readonly choices: readonly (readonly [input: number, member: number])[]
}

/** A way not yet written out: from an input, from a child, or from two shorter ways. */
interface Step {
  readonly weight: number
  readonly input: number
  readonly member: number
  readonly first: Step | null
  readonly second: Step | null
}

const heavier = (one: Step, other: Step): number => other.weight - one.weight

/**
 * The heaviest ways through a circuit, greatest first. Ways exclude each other because the circuit is deterministic.
 * @param members by input, the weights of what it stands for, greatest first.
 */
export function bestWays(circuit: Circuit, members: readonly (readonly number[])[], wanted: number): readonly Way[] {
  const { kind, start, children } = circuit
  const lists: (readonly Step[])[] = []
  for (let node = 0; node < kind.length; node++) {
    const own = children.subarray(start[node], start[node + 1])
    if (kind[node] === SUM_OF_INPUTS) {
      const steps = [...own].flatMap((input) =>
        (members[input] ?? [])
          .slice(0, wanted)
          .map((weight, member) => ({ weight, input, member, first: null, second: null })),
      )
      lists.push(heaviest(steps, wanted))
    } else if (kind[node] === PRODUCT) {
      const [head = -1, ...others] = own
      lists.push(others.reduce((list, child) => pairs(list, lists[child] ?? [], wanted), lists[head] ?? []))
    } else
      lists.push(
        heaviest(
          [...own].flatMap((child) => lists[child] ?? []),
          wanted,
        ),
      )
  }
  return (lists.at(-1) ?? []).map((step) => ({ weight: step.weight, choices: choicesOf(step) }))
}

const heaviest = (steps: Step[], wanted: number): Step[] =>
  steps
    .filter(({ weight }) => weight > 0)
    .sort(heavier)
    .slice(0, wanted)

/** The heaviest products of one way from each list; the pair (i, j) can be among the first n only if (i + 1)(j + 1) <= n. */
function pairs(ones: readonly Step[], others: readonly Step[], wanted: number): readonly Step[] {
  const found: Step[] = []
  for (let one = 0; one < ones.length; one++)
    for (let other = 0; other < others.length && (one + 1) * (other + 1) <= wanted; other++) {
      const [first, second] = [ones[one] as Step, others[other] as Step]
      found.push({ weight: first.weight * second.weight, input: -1, member: 0, first, second })
    }
  return heaviest(found, wanted)
}

function choicesOf(step: Step): (readonly [number, number])[] {
  const found: (readonly [number, number])[] = []
  const left = [step]
  for (let next = left.pop(); next !== undefined; next = left.pop()) {
    if (next.first === null || next.second === null) found.push([next.input, next.member])
    else left.push(next.first, next.second)
  }
  return found
}
