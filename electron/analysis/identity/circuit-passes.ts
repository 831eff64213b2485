import { type Circuit, PRODUCT, SUM_OF_INPUTS } from './circuit.ts'
import { type PassPlan, RUN_STRIDE } from './pass-plan.ts'

/** Fills the values of all nodes; those of the inputs stand already. Children come before parents; answers the total. */
export function upPass({ inputCount, root, runs, children }: PassPlan, values: Float64Array): number {
  let slot = inputCount
  let at = 0
  for (let run = 0; run < runs.length; run += RUN_STRIDE) {
    const count = runs[run + 1] as number
    const end = runs[run + 2] as number
    if (runs[run] === PRODUCT) {
      if (count === 2)
        for (; slot < end; slot++, at += 2)
          values[slot] = (values[children[at] as number] as number) * (values[children[at + 1] as number] as number)
      else
        for (; slot < end; slot++) {
          let own = values[children[at] as number] as number
          for (const last = at + count; ++at < last; ) own *= values[children[at] as number] as number
          values[slot] = own
        }
    } else if (count === 2)
      for (; slot < end; slot++, at += 2)
        values[slot] = (values[children[at] as number] as number) + (values[children[at + 1] as number] as number)
    else
      for (; slot < end; slot++) {
        let own = values[children[at] as number] as number
        for (const last = at + count; ++at < last; ) own += values[children[at] as number] as number
        values[slot] = own
      }
  }
  return values[root] as number
}

/** The same for some nodes alone, named children before parents; the values of all others stand. */
export function upPassOf(
  { inputCount, root, kind, start, children }: PassPlan,
  nodes: Int32Array,
  values: Float64Array,
): number {
  for (const node of nodes) {
    const end = start[node + 1] as number
    let at = start[node] as number
    let own = values[children[at] as number] as number
    if (kind[node] === PRODUCT) while (++at < end) own *= values[children[at] as number] as number
    else while (++at < end) own += values[children[at] as number] as number
    values[inputCount + node] = own
  }
  return values[root] as number
}

/**
 * Derivative of the total by every input (Darwiche, J. ACM 50 (2003) 280-305), from the values of an up pass.
 * A product with a child of value 0 passes on the product of the others, computed without division.
 * @param slopes room for one number per slot, filled here; those of the inputs come first.
 */
export function downPass(plan: PassPlan, values: Float64Array, slopes: Float64Array): void {
  const { slotCount, root, runs, children } = plan
  slopes.fill(0)
  slopes[root] = 1
  let slot = slotCount - 1
  let end = children.length
  for (let run = runs.length - RUN_STRIDE; run >= 0; run -= RUN_STRIDE) {
    const count = runs[run + 1] as number
    const first = run === 0 ? plan.inputCount : (runs[run - 1] as number)
    if (runs[run] !== PRODUCT)
      for (; slot >= first; slot--, end -= count) {
        const slope = slopes[slot] as number
        if (slope === 0) continue
        for (let at = end - count; at < end; at++) {
          const child = children[at] as number
          slopes[child] = (slopes[child] as number) + slope
        }
      }
    else if (count === 2)
      for (; slot >= first; slot--, end -= 2) {
        const slope = slopes[slot] as number
        if (slope === 0) continue
        const one = children[end - 2] as number
        const other = children[end - 1] as number
        slopes[one] = (slopes[one] as number) + slope * (values[other] as number)
        slopes[other] = (slopes[other] as number) + slope * (values[one] as number)
      }
    else
      for (; slot >= first; slot--, end -= count) {
        const slope = slopes[slot] as number
        if (slope === 0) continue
        const value = values[slot] as number
        if (value > 1e-290) {
          const whole = slope * value
          for (let at = end - count; at < end; at++) {
            const child = children[at] as number
            slopes[child] = (slopes[child] as number) + whole / (values[child] as number)
          }
        } else passOnWithoutDivision(children, end - count, end, slope, values, slopes)
      }
  }
}

function passOnWithoutDivision(
  children: Int32Array,
  from: number,
  end: number,
  slope: number,
  values: Float64Array,
  slopes: Float64Array,
): void {
  for (let at = from; at < end; at++) {
    let others = slope
    for (let other = from; other < end && others !== 0; other++)
      if (other !== at) others *= values[children[other] as number] as number
    const child = children[at] as number
    slopes[child] = (slopes[child] as number) + others
  }
}

/** Whether any build has a weight above 0, however small: weights are only looked at as 0 or not. */
export function possiblePass(circuit: Circuit, inputs: Float64Array): boolean {
  const { kind, start, children } = circuit
  const possible = new Uint8Array(kind.length)
  for (let node = 0; node < kind.length; node++) {
    const own = children.subarray(start[node], start[node + 1])
    const yes =
      kind[node] === PRODUCT
        ? own.every((child) => possible[child] === 1)
        : own.some((child) => (kind[node] === SUM_OF_INPUTS ? (inputs[child] as number) > 0 : possible[child] === 1))
    possible[node] = yes ? 1 : 0
  }
  return possible[kind.length - 1] === 1
}

/** Exact number of ways, for whole-number inputs: how many builds each class or label stands for. */
export function countPass(circuit: Circuit, inputs: readonly bigint[]): bigint {
  const { kind, start, children } = circuit
  const counts: bigint[] = []
  for (let node = 0; node < kind.length; node++) {
    const own = children.subarray(start[node], start[node + 1])
    if (kind[node] === PRODUCT) counts.push(own.reduce((product, child) => product * (counts[child] ?? 0n), 1n))
    else if (kind[node] === SUM_OF_INPUTS) counts.push(own.reduce((sum, input) => sum + (inputs[input] ?? 0n), 0n))
    else counts.push(own.reduce((sum, child) => sum + (counts[child] ?? 0n), 0n))
  }
  return counts.at(-1) ?? 0n
}
