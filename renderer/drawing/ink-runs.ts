import type { InkLine, PlanView } from '../../shared-types/figure.ts'

/** The ink of a view in as few paths as its order allows, and the ground of sheet colour under its details. */
export interface ViewInk {
  readonly runs: readonly InkLine[]
  /** All detail lines as one path, to be drawn in the sheet's colour over hatches, so that vents and handles stay seen. */
  readonly cleared: string
}

const known = new WeakMap<PlanView, ViewInk>()

/** Joins neighbouring lines of one weight that cover nothing into one path; worked out once for each view. */
export function inkOf(view: PlanView): ViewInk {
  const made = known.get(view)
  if (made !== undefined) return made
  const runs: InkLine[] = []
  for (const line of view.ink) {
    const last = runs.at(-1)
    if (last !== undefined && !last.occlude && !line.occlude && last.weight === line.weight) {
      runs[runs.length - 1] = { ...last, path: `${last.path} ${line.path}` }
    } else {
      runs.push(line)
    }
  }
  const details = view.ink.filter(({ weight, occlude }) => weight === 'detail' && !occlude)
  const ink = { runs, cleared: details.map(({ path }) => path).join(' ') }
  known.set(view, ink)
  return ink
}
