/**
 * Decibans: ten times the common logarithm of a factor on the odds (I. J. Good, Biometrika 66 (1979) 393-396, after
 * Turing). Infinite when the factor is 0 or infinite.
 */
export const decibans = (factor: number): number => 10 * Math.log10(factor)

/** Bits of uncertainty of a distribution; weights of 0 add nothing. */
export function entropyBits(shares: Iterable<number>): number {
  let bits = 0
  for (const share of shares) if (share > 0) bits -= share * Math.log2(share)
  return bits
}
