/** Limits of one rule, as checked: what failed, in words; empty when accepted. */
export interface SteelworkVerdict {
  readonly accepted: boolean
  readonly failed: readonly string[]
}

/**
 * How many areas, spots and readings SSPC-PA 2 (2012) asks for on structural steel: every 10 m2 up to 30, three up to 100, one
 * more for each further 100; five spots an area, three readings a spot. It is not meant for vehicles or for failures.
 */
export function steelworkSampling(areaSquareMetres: number): { areas: number; spots: number; readings: number } {
  const areas =
    areaSquareMetres <= 30
      ? Math.max(1, Math.ceil(areaSquareMetres / 10))
      : 3 + Math.max(0, Math.ceil((areaSquareMetres - 100) / 100))
  return { areas, spots: 5 * areas, readings: 15 * areas }
}

/** SSPC-PA 2 restriction level 3 for structural steel: spots from 80 % of the least to 120 % of the most, mean within. */
export function spotLimitsLevel3(least: number, most: number): { readonly low: number; readonly high: number } {
  return { low: 0.8 * least, high: 1.2 * most }
}

/** Acceptance of dry films on structural steel by ISO 19840:2012: mean, no reading under 80 %, fewer than 20 % under nominal, none above the most. */
export function acceptSteelwork(readings: readonly number[], nominal: number, most: number): SteelworkVerdict {
  const mean = readings.reduce((sum, value) => sum + value, 0) / readings.length
  const under = readings.filter((value) => value < nominal).length
  const failed = [
    ...(mean < nominal ? ['the mean is under the nominal film'] : []),
    ...(readings.some((value) => value < 0.8 * nominal) ? ['a reading is under 80 % of the nominal film'] : []),
    ...(under > 0 && under >= 0.2 * readings.length ? ['20 % or more of the readings are under the nominal film'] : []),
    ...(readings.some((value) => value > most) ? ['a reading is above the most that is allowed'] : []),
  ]
  return { accepted: failed.length === 0, failed }
}
