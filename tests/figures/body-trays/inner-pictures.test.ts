import { describe, expect, it } from 'vitest'
import type { PlanSheetFile } from '../../../electron/figures/plan-sheet-file.ts'
import { drawnBody } from '../../../electron/figures/plan-sheets.ts'
import { renderPlanSvg } from '../../../electron/figures/render-plan-svg.ts'
import { dimensionsOf } from '../../../electron/sheets/dimension-list.ts'
import { sheets as colours } from '../../../shared-types/tokens.ts'
import { plainMarks } from '../plain-marks.ts'
import { bodies } from './test-frames.ts'

const PIXELS_PER_MM = 0.18
const conditions = ['front-spring-tower', 'spare-well', 'outriggers', 'floor-crossmember']
const framed = ['separate-frame', 'floor-crossmember']

const sizeOf = (svg: string) => ({
  width: Number(/width="([\d.]+)"/.exec(svg)?.[1]),
  height: Number(/height="([\d.]+)"/.exec(svg)?.[1]),
})

/** Openings and bay above, inside and underneath below them. */
function contactSheet(title: string, sheets: readonly PlanSheetFile[]): string {
  const pictures = sheets.map((sheet) =>
    renderPlanSvg({ sheet, marks: plainMarks(sheet), look: 'paper', pixelsPerMm: PIXELS_PER_MM }),
  )
  const sizes = pictures.map(sizeOf)
  const column = Math.max(sizes[0]?.width ?? 0, sizes[2]?.width ?? 0)
  const row = Math.max(sizes[0]?.height ?? 0, sizes[1]?.height ?? 0)
  const width = column + Math.max(sizes[1]?.width ?? 0, sizes[3]?.width ?? 0)
  const height = row + Math.max(sizes[2]?.height ?? 0, sizes[3]?.height ?? 0)
  const placed = pictures.map((picture, index) =>
    picture.replace('<svg ', `<svg x="${(index % 2) * column}" y="${index < 2 ? 0 : row}" `),
  )
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">`,
    `<title>${title}</title>`,
    `<rect width="${width}" height="${height}" fill="${colours.paper.sheet}"/>`,
    ...placed,
    '</svg>',
  ].join('\n')
}

describe('reference pictures of the inner sheets, on paper', () => {
  it.each(bodies)('%s', async (body) => {
    const fitted = body === 'pickup' || body === 'van' ? framed : conditions
    const { title, sheets } = drawnBody(body, dimensionsOf(body, {}), fitted)
    const inner = sheets.filter(({ id }) => id !== 'outside')
    await expect(contactSheet(title, inner)).toMatchFileSnapshot(`reference/${body}-paper.svg`)
  })
})
