import { betaQuantile } from './beta-distribution.ts'

type Coefficients = readonly [number, number, number, number, number, number, number, number]
type Fraction = readonly [above: Coefficients, below: Coefficients]

/** Written out rather than looped, because every censored reading of a drawn field asks for one. */
const polynomial = (of: Coefficients, x: number): number =>
  ((((((of[7] * x + of[6]) * x + of[5]) * x + of[4]) * x + of[3]) * x + of[2]) * x + of[1]) * x + of[0]

const centre: Fraction = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
]
const shoulder: Fraction = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
]
const tail: Fraction = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 0.000018463183175100548,
    1.421511758316446e-7, 2.0442631033899397e-15,
  ],
]

const ratio = ([above, below]: Fraction, x: number): number => polynomial(above, x) / polynomial(below, x)

/** Quantile of the standard normal distribution, to about 1e-16 relative (Wichura, algorithm AS 241, PPND16, 1988). */
export function normalQuantile(p: number): number {
  const q = p - 0.5
  if (Math.abs(q) <= 0.425) return q * ratio(centre, 0.180625 - q * q)
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p))
  const size = r <= 5 ? ratio(shoulder, r - 1.6) : ratio(tail, r - 5)
  return q < 0 ? -size : size
}

/** Half of the middle 90 % of a normal distribution, in standard deviations. */
export const HALF_OF_NINETY = normalQuantile(0.95)

/** Quantile of Student's t with any positive number of degrees of freedom; of the normal distribution when infinite. */
export function studentQuantile(p: number, degreesOfFreedom: number): number {
  if (degreesOfFreedom > 1e8) return normalQuantile(p)
  if (p === 0.5) return 0
  const outside = 2 * Math.min(p, 1 - p)
  const x = betaQuantile(degreesOfFreedom / 2, 0.5, outside)
  const t = Math.sqrt((degreesOfFreedom * (1 - x)) / x)
  return p < 0.5 ? -t : t
}
