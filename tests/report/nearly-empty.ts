import { LINE_MM, pageGeometry } from '../../electron/report/layout/page-geometry.ts'
import type { Paper } from '../../shared-types/edition.ts'
import type { Told } from './told-pages.ts'

const MM_PER_POINT = 25.4 / 72
const LEAST_FILLED = 0.3
/** Heads of what stands alone on its page however short it is, beside the title page. */
const ALONE = ['Edition and certification']

/** Share of the text field down to the lowest line of a page; its head and foot are not read with the page. */
function filledShare(told: readonly Told[], paper: Paper): number {
  const { heightMm, topMm, lines } = pageGeometry(paper)
  const lowest = Math.min(...told.map(({ y }) => y)) * MM_PER_POINT
  return (heightMm - lowest - topMm) / (lines * LINE_MM)
}

/** Pages that are nearly empty, with how full they are; the last may be, and what stands alone. */
export const nearlyEmpty = (pages: readonly (readonly Told[])[], paper: Paper): string[] =>
  pages.flatMap((told, index) => {
    const alone = index === 0 || told.some(({ role, text }) => role === 'H1' && ALONE.includes(text))
    const share = filledShare(told, paper)
    return alone || index === pages.length - 1 || share >= LEAST_FILLED
      ? []
      : [`page ${index + 1}: ${share.toFixed(2)}`]
  })
