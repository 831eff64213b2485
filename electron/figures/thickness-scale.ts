/** Marks of the scale, µm. */
const MARKS_UM = [50, 100, 200, 500, 1000, 2000, 5000, 10_000]

/** A logarithmic scale of thickness from the mark below the thinnest to the mark above the thickest; shares of its length. */
export interface ThicknessScale {
  readonly ticks: readonly { readonly um: number; readonly at: number }[]
  at(um: number): number
}

/** A scale that holds every thickness given, µm; from 50 to 500 at least, so that cars compare. */
export function thicknessScale(thicknesses: readonly number[]): ThicknessScale {
  const least = Math.min(100, ...thicknesses)
  const most = Math.max(500, ...thicknesses)
  const from = MARKS_UM.findLast((mark) => mark <= least) ?? MARKS_UM[0] ?? 50
  const to = MARKS_UM.find((mark) => mark >= most) ?? MARKS_UM.at(-1) ?? 10_000
  const at = (um: number) => Math.min(1, Math.max(0, Math.log(Math.max(1, um) / from) / Math.log(to / from)))
  return { at, ticks: MARKS_UM.filter((mark) => mark >= from && mark <= to).map((um) => ({ um, at: at(um) })) }
}
