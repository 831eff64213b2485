/**
 * Numbers of the exponential, in memory because that is where a vector of two equal ones is fetched from at the least cost:
 * the least power taken, log2(e), what leaves a whole number in the last bits when it is added, ln 2 in two parts of which the
 * first ends in zeros, and one by the factorials of 13 to 0.
 */
const NUMBERS: usize = memory.data<f64>([
  -708,
  Math.LOG2E,
  6755399441055744,
  0.6931471803691238,
  1.9082149292705877e-10,
  1.6059043836821613e-10,
  2.08767569878681e-9,
  2.505210838544172e-8,
  2.755731922398589e-7,
  2.7557319223985893e-6,
  2.48015873015873e-5,
  1.984126984126984e-4,
  1.388888888888889e-3,
  8.333333333333333e-3,
  4.1666666666666664e-2,
  1.6666666666666666e-1,
  0.5,
  1,
])

/** One step of Horner's rule for two numbers. */
function next(sum: v128, square: v128, place: usize): v128 {
  return f64x2.add(f64x2.mul(sum, square), v128.load64_splat(NUMBERS + place * 8))
}

/**
 * exp of two numbers that are not above nought, to 4e-16 relative: exp(x) = 2^k exp(r), r at most ln 2 / 2 in size, by the
 * Taylor polynomial of degree 13 in even and odd powers (reduction in two parts as W. J. Cody and W. Waite, Software Manual
 * for the Elementary Functions, 1980, recalled). Below -708 it is 3e-308.
 */
export function exponential(x: v128): v128 {
  const bounded = f64x2.pmax(x, v128.load64_splat(NUMBERS))
  const toWhole = v128.load64_splat(NUMBERS, 16)
  const shifted = f64x2.add(f64x2.mul(bounded, v128.load64_splat(NUMBERS, 8)), toWhole)
  const whole = f64x2.sub(shifted, toWhole)
  const rough = f64x2.sub(bounded, f64x2.mul(whole, v128.load64_splat(NUMBERS, 24)))
  const r = f64x2.sub(rough, f64x2.mul(whole, v128.load64_splat(NUMBERS, 32)))
  const square = f64x2.mul(r, r)
  let odd = v128.load64_splat(NUMBERS, 40)
  let even = v128.load64_splat(NUMBERS, 48)
  odd = next(odd, square, 7)
  even = next(even, square, 8)
  odd = next(odd, square, 9)
  even = next(even, square, 10)
  odd = next(odd, square, 11)
  even = next(even, square, 12)
  odd = next(odd, square, 13)
  even = next(even, square, 14)
  odd = next(odd, square, 15)
  even = next(even, square, 16)
  odd = next(odd, square, 17)
  even = next(even, square, 17)
  return i64x2.add(f64x2.add(even, f64x2.mul(odd, r)), i64x2.shl(shifted, 52))
}
