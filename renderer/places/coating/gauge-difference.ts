import type { Gauge, GaugeCheck } from '../../../shared-types/reading.ts'

/** Largest error the maker of a gauge declares at a thickness, ±(a + b·t) in micrometres; null when not declared. */
export function declaredErrorUm(gauge: Pick<Gauge, 'errorUm' | 'errorPercent'>, thicknessUm: number): number | null {
  if (gauge.errorUm === null && gauge.errorPercent === null) return null
  return (gauge.errorUm ?? 0) + ((gauge.errorPercent ?? 0) / 100) * thicknessUm
}

export interface GaugeDifference {
  readonly meanUm: number
  /** Mean of what was read less the certified thickness of the shim, µm. */
  readonly differenceUm: number
  /** Half the range of the readings, µm; null for one reading. */
  readonly spreadUm: number | null
  readonly declaredUm: number | null
  readonly word: 'within the declared error' | 'outside the declared error' | 'error not declared'
}

/** What a check against a shim says: the mean difference, beside what the gauge's maker declares at that thickness. */
export function differenceOf(
  check: Pick<GaugeCheck, 'shimUm' | 'readUm'>,
  gauge: Pick<Gauge, 'errorUm' | 'errorPercent'>,
): GaugeDifference {
  const meanUm = check.readUm.reduce((sum, um) => sum + um, 0) / check.readUm.length
  const differenceUm = meanUm - check.shimUm
  const declaredUm = declaredErrorUm(gauge, check.shimUm)
  const spreadUm = check.readUm.length < 2 ? null : (Math.max(...check.readUm) - Math.min(...check.readUm)) / 2
  if (declaredUm === null) return { meanUm, differenceUm, spreadUm, declaredUm, word: 'error not declared' }
  // Readings are decimal fractions: a difference of exactly the limit must not fail by a rounding of the last bit.
  const within = Math.abs(differenceUm) <= declaredUm + 1e-9
  const word = within ? 'within the declared error' : 'outside the declared error'
  return { meanUm, differenceUm, spreadUm, declaredUm, word }
}
