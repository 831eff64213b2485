import type { Point } from './cubic-path.ts'

/** Figures kept of a chord: its end, the way back to its start, that way's length squared, the height of its start. */
const CHORD = 6
/** Figures kept of a run of chords: its upright box, the heights of its start and its end. */
const RUN = 6
/** Chords in a run. */
const CHORDS_A_RUN = 8

/**
 * The edge of a closed polygon, of which many points ask how near they lie. Chords lie in runs with a box each; a search
 * begins at the run that was nearest to the last point, since the next point is mostly nearest to it too, and then passes
 * over most others by their box alone.
 */
export class Rim {
  readonly #chords: Float64Array
  readonly #runs: Float64Array
  #nearest = 0

  constructor(polygon: readonly Point[]) {
    this.#chords = new Float64Array(polygon.length * CHORD)
    this.#runs = new Float64Array(Math.ceil(polygon.length / CHORDS_A_RUN) * RUN)
    let before = polygon[polygon.length - 1] ?? [0, 0]
    polygon.forEach((here, index) => {
      const [du, dv] = [before[0] - here[0], before[1] - here[1]]
      this.#chords.set([here[0], here[1], du, dv, du * du + dv * dv, before[1]], index * CHORD)
      this.#widen(Math.floor(index / CHORDS_A_RUN) * RUN, before, here, index % CHORDS_A_RUN === 0)
      before = here
    })
  }

  #widen(run: number, before: Point, here: Point, begins: boolean): void {
    const runs = this.#runs
    if (begins) runs.set([before[0], before[0], before[1], before[1], before[1], before[1]], run)
    runs[run] = Math.min(runs[run] ?? 0, here[0])
    runs[run + 1] = Math.max(runs[run + 1] ?? 0, here[0])
    runs[run + 2] = Math.min(runs[run + 2] ?? 0, here[1])
    runs[run + 3] = Math.max(runs[run + 3] ?? 0, here[1])
    runs[run + 5] = here[1]
  }

  /**
   * Distance of a point to the edge; negative outside. Where the edge comes as near as `idle`, some distance up to that.
   */
  roomAt(u: number, v: number, idle = 0): number {
    const chords = this.#chords
    const runs = this.#runs
    const near = idle > 0 ? idle * idle : -1
    let inside = false
    let least = Number.POSITIVE_INFINITY
    let nearest = this.#nearest
    let run = nearest
    for (let left = runs.length; left > 0 && least > near; left -= RUN) {
      const leftU = runs[run] ?? 0
      const aside = Math.max(leftU - u, 0, u - (runs[run + 1] ?? 0))
      const [low, high] = [runs[run + 2] ?? 0, runs[run + 3] ?? 0]
      const over = Math.max(low - v, 0, v - high)
      const isFar = aside * aside + over * over > least
      if (isFar && (over > 0 || u < leftU)) {
        // All of the run lies to the right of the point, or none of it at its height.
        if ((runs[run + 4] ?? 0) > v !== (runs[run + 5] ?? 0) > v) inside = !inside
      } else if (!isFar) {
        const first = (run / RUN) * CHORDS_A_RUN * CHORD
        const last = Math.min(chords.length, first + CHORDS_A_RUN * CHORD)
        for (let at = first; at < last; at += CHORD) {
          const fromU = u - (chords[at] ?? 0)
          const fromV = v - (chords[at + 1] ?? 0)
          const du = chords[at + 2] ?? 0
          const dv = chords[at + 3] ?? 0
          const squared = chords[at + 4] ?? 0
          const along = fromU * du + fromV * dv
          const share = along <= 0 || squared === 0 ? 0 : along >= squared ? 1 : along / squared
          const offU = fromU - share * du
          const offV = fromV - share * dv
          const away = offU * offU + offV * offV
          if (away < least) {
            least = away
            nearest = run
          }
          // A chord that passes the height of the point to its right; both chords of a corner say the same of its height.
          if ((chords[at + 1] ?? 0) > v !== (chords[at + 5] ?? 0) > v && fromU < (fromV * du) / dv) inside = !inside
        }
      }
      run += RUN
      if (run === runs.length) run = 0
    }
    this.#nearest = nearest
    return inside || least <= near ? Math.sqrt(least) : -Math.sqrt(least)
  }
}
