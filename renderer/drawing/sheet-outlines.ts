import type { PlanSheet } from '../../shared-types/figure.ts'

/** Path text (absolute M, L, C, Z) moved by millimetres. */
function movedPath(path: string, byX: number, byY: number): string {
  let isAcross = false
  return path.replace(/-?\d*\.?\d+(?:e-?\d+)?/g, (figure) => {
    isAcross = !isAcross
    return `${Math.round(100 * (Number(figure) + (isAcross ? byX : byY))) / 100}`
  })
}

const known = new WeakMap<PlanSheet, Map<string, string>>()

/** The outlines of a panel in every view it shows in, as one path in sheet millimetres; empty without a panel. */
export function outlinesOnSheet(sheet: PlanSheet, panelId: string | null): string {
  if (panelId === null) return ''
  const ofSheet = known.get(sheet) ?? new Map<string, string>()
  known.set(sheet, ofSheet)
  const made = ofSheet.get(panelId)
  if (made !== undefined) return made
  const path = sheet.views
    .flatMap(({ at, box, panels }) =>
      panels
        .filter((panel) => panel.panelId === panelId)
        .map(({ outline }) => movedPath(outline, at.x - box.u, at.y - box.v)),
    )
    .join(' ')
  ofSheet.set(panelId, path)
  return path
}
