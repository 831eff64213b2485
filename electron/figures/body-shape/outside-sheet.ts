import type { BodyDimensions } from '../../../shared-types/body-dimensions.ts'
import type { PlanSheetFile, PlanViewFile } from '../plan-sheet-file.ts'
import type { BodyDescription } from './body-description.ts'
import { bodyForm } from './body-form.ts'
import { bodyFaces } from './faces.ts'
import { outsideView } from './outside-views.ts'
import type { OutsideWork } from './outside-work.ts'
import { ofOtherSide, viewLines } from './view-lines.ts'
import { glassOf, setPanels } from './windows-and-flaps.ts'

/** A body of given dimensions, ready to be drawn from any side. */
export function outsideWork(
  description: BodyDescription,
  dimensions: BodyDimensions,
  conditions: ReadonlySet<string>,
): OutsideWork {
  const form = bodyForm(description, dimensions)
  const { net, faces, windows } = bodyFaces(form)
  return {
    form,
    net,
    faces,
    windows,
    glass: glassOf(net, form, windows, conditions),
    set: setPanels(net, form, conditions),
    conditions,
  }
}

/** Room kept on the sheet, mm: margin, ruler between side and plan, caption between plan and mirrored side, end views. */
const room = { edge: 70, top: 20, ruler: 373, caption: 190, ends: 732, foot: 61, right: 32 } as const

/** The outside sheet: sides and plan share their stations, front and rear stand on the ground of the sides. */
export function outsideSheet(work: OutsideWork): PlanSheetFile {
  const { lengthMm, widthMm, heightMm } = work.form.dimensions
  const leftGround = heightMm + room.top
  const planMiddle = leftGround + room.ruler + widthMm / 2
  const rightGround = planMiddle + widthMm / 2 + room.caption + heightMm
  const ends = room.edge + lengthMm + room.ends + widthMm / 2
  const reach = { aboveMm: room.ruler, belowMm: room.caption + heightMm * 0.35 }
  const side = viewLines(work, 'left', reach)
  const views: PlanViewFile[] = []
  for (const [id, x, y] of [
    ['left', room.edge, leftGround - heightMm],
    ['roof', room.edge, planMiddle - widthMm / 2],
    ['right', room.edge, rightGround - heightMm],
    ['front', ends - widthMm / 2, leftGround - heightMm],
    ['rear', ends - widthMm / 2, rightGround - heightMm],
  ] as const) {
    const lines = id === 'left' ? side : id === 'right' ? ofOtherSide(side) : viewLines(work, id, reach)
    views.push(outsideView(work, id, { x, y }, lines, views))
  }
  return {
    id: 'outside',
    name: 'Outside',
    widthMm: ends + widthMm / 2 + room.right,
    heightMm: rightGround + room.foot,
    views,
  }
}
