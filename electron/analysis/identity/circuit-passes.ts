import { type Circuit, PRODUCT, SUM_OF_INPUTS } from './circuit.ts'

/** Values of all nodes for given inputs; children before parents. `values` is filled and its last entry is the total. */
export function upPass(circuit: Circuit, inputs: Float64Array, values: Float64Array): number {
  const { kind, start, children } = circuit
  let total = 0
  for (let node = 0; node < kind.length; node++) {
    const end = start[node + 1] as number
    let at = start[node] as number
    if (kind[node] === PRODUCT) {
      total = 1
      for (; at < end; at++) total *= values[children[at] as number] as number
    } else if (kind[node] === SUM_OF_INPUTS) {
      total = 0
      for (; at < end; at++) total += inputs[children[at] as number] as number
    } else {
      total = 0
      for (; at < end; at++) total += values[children[at] as number] as number
    }
    values[node] = total
  }
  return total
}

/**
 * Derivative of the total by every input (Darwiche, J. ACM 50 (2003) 280-305), from the values of an up pass.
 * A product with a child of value 0 passes on the product of the others, computed without division.
 * @param slopes room for one number per node, filled here. @param byInput derivatives are written here.
 */
export function downPass(circuit: Circuit, values: Float64Array, slopes: Float64Array, byInput: Float64Array): void {
  const { kind, start, children } = circuit
  slopes.fill(0)
  byInput.fill(0)
  slopes[kind.length - 1] = 1
  for (let node = kind.length - 1; node >= 0; node--) {
    const slope = slopes[node] as number
    if (slope === 0) continue
    const from = start[node] as number
    const end = start[node + 1] as number
    if (kind[node] === PRODUCT) {
      const value = values[node] as number
      if (value > 1e-290) {
        const whole = slope * value
        for (let at = from; at < end; at++) {
          const child = children[at] as number
          slopes[child] = (slopes[child] as number) + whole / (values[child] as number)
        }
      } else passOnWithoutDivision(children, from, end, slope, values, slopes)
    } else if (kind[node] === SUM_OF_INPUTS) {
      for (let at = from; at < end; at++) {
        const input = children[at] as number
        byInput[input] = (byInput[input] as number) + slope
      }
    } else {
      for (let at = from; at < end; at++) {
        const child = children[at] as number
        slopes[child] = (slopes[child] as number) + slope
      }
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
