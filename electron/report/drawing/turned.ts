import type { PlanView } from '../../../shared-types/figure.ts'
import type { PlanPoint, ViewId } from '../../../shared-types/finding.ts'
import type { RecordView } from '../../../shared-types/record.ts'

/** Views of the whole car's length that lie along the page on screen and stand on paper, nose to the top. */
const turnedViews: ReadonlySet<ViewId | null> = new Set<ViewId>(['floor', 'under'])

export const isTurned = ({ id }: PlanView): boolean => turnedViews.has(id)

/** A quarter turn clockwise: what pointed left points up. */
const turnPoint = ({ u, v }: PlanPoint): PlanPoint => ({ u: -v, v: u })

/** The numbers of a path come in pairs. */
const turnPath = (path: string): string =>
  path.replace(/(-?[\d.]+)[\s,]+(-?[\d.]+)/g, (_, u: string, v: string) => {
    const turned = turnPoint({ u: Number(u), v: Number(v) })
    return `${turned.u + 0} ${turned.v}`
  })

/** A view a quarter turn clockwise, its left upper corner where it was. */
export function turnView(view: PlanView): PlanView {
  const { u, v, width, height } = view.box
  return {
    ...view,
    box: { u: -(v + height), v: u, width: height, height: width },
    panels: view.panels.map((panel) => ({
      ...panel,
      outline: turnPath(panel.outline),
      label: turnPoint(panel.label),
    })),
    ink: view.ink.map((line) => ({ ...line, path: turnPath(line.path) })),
    silhouette: turnPath(view.silhouette),
  }
}

/** The record with every place on the turned views turned as they are, for marks on the printed plan. */
export function turnRecord(record: RecordView): RecordView {
  const turnAt = <Marked extends { readonly view: ViewId | null; readonly at: PlanPoint | null }>(marked: Marked) =>
    marked.at !== null && turnedViews.has(marked.view) ? { ...marked, at: turnPoint(marked.at) } : marked
  return {
    ...record,
    findings: record.findings.map((finding) => {
      const { extent } = finding
      if (extent === null || !turnedViews.has(extent.view)) return finding
      return { ...finding, extent: { ...extent, points: extent.points.map(turnPoint) } }
    }),
    exhibits: record.exhibits.map(turnAt),
    spots: record.spots.map(turnAt),
  }
}
