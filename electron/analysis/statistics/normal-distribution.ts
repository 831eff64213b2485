const ROOT_OF_TWO_PI = Math.sqrt(2 * Math.PI)
/** Above this the chance left over is less than half of the last digit of one. */
const WHOLLY_ONE = 8.3

/**
 * Standard normal distribution function, within 1e-14 of the truth and to 10 digits in the lower tail (rational
 * approximation 5666 of J. F. Hart, Computer Approximations, 1968, as given by G. West, Wilmott Magazine, May 2005, 70-76;
 * a continued fraction beyond 7.07).
 */
export function normalProbability(x: number): number {
  if (x > WHOLLY_ONE) return 1
  const size = Math.abs(x)
  if (size > 38) return 0
  const density = Math.exp(-0.5 * size * size)
  const below = size < 7.07106781186547 ? (density * above(size)) / under(size) : density / fraction(size)
  return x > 0 ? 1 - below : below
}

const above = (x: number): number =>
  (((((3.52624965998911e-2 * x + 0.700383064443688) * x + 6.37396220353165) * x + 33.912866078383) * x +
    112.079291497871) *
    x +
    221.213596169931) *
    x +
  220.206867912376

const under = (x: number): number =>
  ((((((8.83883476483184e-2 * x + 1.75566716318264) * x + 16.064177579207) * x + 86.7807322029461) * x +
    296.564248779674) *
    x +
    637.333633378831) *
    x +
    793.826512519948) *
    x +
  440.413735824752

/** Laplace's continued fraction of Mills' ratio, times the root of two pi. */
function fraction(x: number): number {
  let value = x
  for (let step = 20; step >= 1; step -= 1) value = x + step / value
  return value * ROOT_OF_TWO_PI
}
