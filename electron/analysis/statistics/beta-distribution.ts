const lanczos = [
  0.9999999999998099, 676.5203681218851, -1259.1392167224028, 771.3234287776531, -176.6150291621406, 12.507343278686905,
  -0.13857109526572012, 0.000009984369578019572, 1.5056327351493116e-7,
]

/** Logarithm of the gamma function of a positive number, to about 1e-14 (Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86-96). */
export function logGamma(x: number): number {
  const shifted = x - 1
  const sum = lanczos.reduce(
    (total, coefficient, at) => total + (at === 0 ? coefficient : coefficient / (shifted + at)),
    0,
  )
  const t = shifted + 7.5
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum)
}

/**
 * Regularised incomplete beta function I_x(a, b), a and b positive, by its continued fraction (Abramowitz and Stegun,
 * 26.5.8) with Lentz's method; turned round where it would converge slowly.
 */
export function incompleteBeta(a: number, b: number, x: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(b, a, 1 - x)
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a
  const tiny = 1e-300
  let numerator = 1
  let denominator = 1 / nonZero(1 - ((a + b) * x) / (a + 1), tiny)
  let fraction = denominator
  for (let m = 1; m < 10_000; m += 1) {
    let change = 1
    for (const step of [
      (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m)),
      (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1)),
    ]) {
      denominator = 1 / nonZero(1 + step * denominator, tiny)
      numerator = nonZero(1 + step / numerator, tiny)
      fraction *= denominator * numerator
      change = denominator * numerator
    }
    if (Math.abs(change - 1) < 1e-15) break
  }
  return front * fraction
}

const nonZero = (value: number, tiny: number): number => (Math.abs(value) < tiny ? tiny : value)

/** The x with I_x(a, b) = p, by halving until two neighbouring numbers are left. */
export function betaQuantile(a: number, b: number, p: number): number {
  let low = 0
  let high = 1
  for (let step = 0; step < 1100; step += 1) {
    const middle = (low + high) / 2
    if (middle === low || middle === high) break
    if (incompleteBeta(a, b, middle) < p) low = middle
    else high = middle
  }
  return (low + high) / 2
}
