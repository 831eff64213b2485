import { normalProbability } from './normal-distribution.ts'

/** Points and weights of Gauss and Legendre with 20 points, one half; the other half mirrors it. */
const points = [
  [0.9931285991850949, 0.017614007139152118],
  [0.9639719272779138, 0.04060142980038694],
  [0.912234428251326, 0.06267204833410907],
  [0.8391169718222188, 0.08327674157670475],
  [0.7463319064601508, 0.10193011981724044],
  [0.636053680726515, 0.11819453196151843],
  [0.5108670019508271, 0.13168863844917664],
  [0.37370608871541955, 0.14209610931838204],
  [0.22778585114164507, 0.14917298647260374],
  [0.07652652113349734, 0.15275338713072584],
] as const

/**
 * P(X > h, Y > k) of two standard normal variables with the given correlation, to about 1e-14: Drezner and Wesolowsky,
 * J. Stat. Comput. Simul. 35 (1990) 101-107, with the series for high correlations of A. Genz, Statistics and Computing
 * 14 (2004) 251-260.
 */
export function bothExceed(h: number, k: number, correlation: number): number {
  if (Math.abs(correlation) < 0.925) return moderate(h, k, correlation)
  return correlation < 0 ? nearlyOpposed(h, k, correlation) : high(h, k, correlation)
}

function moderate(h: number, k: number, correlation: number): number {
  const squares = (h * h + k * k) / 2
  const angle = Math.asin(correlation) / 2
  let sum = 0
  for (const [at, weight] of points)
    for (const sign of [-1, 1]) {
      const sine = Math.sin(angle * (1 + sign * at))
      sum += weight * Math.exp((sine * h * k - squares) / (1 - sine * sine))
    }
  return (sum * angle) / (2 * Math.PI) + normalProbability(-h) * normalProbability(-k)
}

function nearlyOpposed(h: number, k: number, correlation: number): number {
  const remainder = tail(h, -k, -correlation)
  return (h < -k ? normalProbability(-k) - normalProbability(h) : 0) + remainder
}

function high(h: number, k: number, correlation: number): number {
  return normalProbability(-Math.max(h, k)) - tail(h, k, correlation)
}

/** What separates the two probabilities above from those at a correlation of exactly one. */
function tail(h: number, k: number, correlation: number): number {
  if (correlation >= 1) return 0
  const square = (1 - correlation) * (1 + correlation)
  const root = Math.sqrt(square)
  const gap = (h - k) ** 2
  const product = h * k
  const c = (4 - product) / 8
  const d = (12 - product) / 16
  let value = 0
  const start = -(gap / square + product) / 2
  if (start > -100)
    value =
      root * Math.exp(start) * (1 - (c * (gap - square) * (1 - (d * gap) / 5)) / 3 + (c * d * square * square) / 5)
  if (product > -100) {
    const distance = Math.sqrt(gap)
    const far = Math.sqrt(2 * Math.PI) * normalProbability(-distance / root)
    value -= Math.exp(-product / 2) * far * distance * (1 - (c * gap * (1 - (d * gap) / 5)) / 3)
  }
  const half = root / 2
  for (const [at, weight] of points)
    for (const sign of [-1, 1]) {
      const x = (half * (1 + sign * at)) ** 2
      const power = -(gap / x + product) / 2
      if (power <= -100) continue
      const rest = Math.sqrt(1 - x)
      const series = 1 + c * x * (1 + d * x)
      value += half * weight * Math.exp(power) * (Math.exp((-product * x) / (2 * (1 + rest) ** 2)) / rest - series)
    }
  return value / (2 * Math.PI)
}
