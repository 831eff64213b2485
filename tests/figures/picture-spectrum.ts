/** Grey values of a square picture, 0 white to 1 black, row by row. */
export interface GreySquare {
  readonly side: number
  readonly ink: Float64Array
}

export const ORIENTATIONS = 12
const BANDS = 6

/** Mean darkness of a picture, and how its structure is spread over orientation and fineness; the shares sum to 1. */
export interface Texture {
  readonly darkness: number
  readonly shares: Float64Array
}

/**
 * Texture by the power spectrum of a picture under a Hann window, gathered into twelve orientations of 15 degrees and
 * six octaves of frequency (ring and wedge features of the Fourier power spectrum: Weszka, Dyer and Rosenfeld, IEEE
 * Transactions on Systems, Man and Cybernetics 6, 1976).
 */
export function textureOf({ side, ink }: GreySquare): Texture {
  const darkness = ink.reduce((sum, value) => sum + value, 0) / ink.length
  const window = Float64Array.from({ length: side }, (_, at) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (at + 0.5)) / side))
  const flat = ink.map((value, at) => (value - darkness) * at0(window, at % side) * at0(window, Math.floor(at / side)))
  const power = powerSpectrum(flat, side)
  const shares = new Float64Array(ORIENTATIONS * BANDS)
  const half = Math.floor(side / 2)
  for (let row = -half; row < half; row++) {
    for (let column = -half; column < half; column++) {
      const frequency = Math.hypot(row, column)
      if (frequency < 2) continue
      const turn = (Math.atan2(row, column) + 2 * Math.PI) % Math.PI
      const wedge = Math.round((turn / Math.PI) * ORIENTATIONS) % ORIENTATIONS
      const ring = Math.min(BANDS - 1, Math.floor(Math.log2(frequency / 2)))
      const place = wedge * BANDS + ring
      shares[place] = at0(shares, place) + at0(power, ((row + side) % side) * side + ((column + side) % side))
    }
  }
  const whole = shares.reduce((sum, share) => sum + share, 0)
  return { darkness, shares: whole === 0 ? shares : shares.map((share) => share / whole) }
}

/** Hellinger distance of the two spreads (0 alike, 1 nothing in common), and how far apart they are in darkness. */
export function textureDistance(one: Texture, other: Texture): number {
  const alike = one.shares.reduce((sum, share, at) => sum + Math.sqrt(share * at0(other.shares, at)), 0)
  return Math.sqrt(Math.max(0, 1 - alike)) + Math.abs(one.darkness - other.darkness)
}

const at0 = (values: Float64Array, at: number): number => values[at] ?? 0

/** Power of the discrete Fourier transform, rows first and then columns. */
function powerSpectrum(values: Float64Array, side: number): Float64Array {
  const cosines = Float64Array.from({ length: side }, (_, at) => Math.cos((2 * Math.PI * at) / side))
  const sines = Float64Array.from({ length: side }, (_, at) => Math.sin((2 * Math.PI * at) / side))
  const transform = (real: Float64Array, imaginary: Float64Array): [Float64Array, Float64Array] => {
    const [outReal, outImaginary] = [new Float64Array(side * side), new Float64Array(side * side)]
    for (let line = 0; line < side; line++) {
      for (let wave = 0; wave < side; wave++) {
        let [re, im] = [0, 0]
        for (let at = 0; at < side; at++) {
          const [c, s] = [at0(cosines, (wave * at) % side), -at0(sines, (wave * at) % side)]
          const [a, b] = [at0(real, line * side + at), at0(imaginary, line * side + at)]
          re += a * c - b * s
          im += a * s + b * c
        }
        // Turned over, so that the second pass runs along the columns.
        outReal[wave * side + line] = re
        outImaginary[wave * side + line] = im
      }
    }
    return [outReal, outImaginary]
  }
  const [real, imaginary] = transform(...transform(values, new Float64Array(side * side)))
  return real.map((value, at) => value * value + at0(imaginary, at) ** 2)
}
