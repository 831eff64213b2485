import type { Paper } from '../../../shared-types/edition.ts'
import { page } from '../../../shared-types/tokens.ts'

/** Sheet sizes in mm: A4 by ISO 216; Letter is 8.5 by 11 inches, exact. */
const sheetSizes = { A4: { widthMm: 210, heightMm: 297 }, Letter: { widthMm: 215.9, heightMm: 279.4 } } as const

/** Width of the text field, mm: 170 on either sheet, so that figures keep their round scale. */
export const FIELD_WIDTH_MM = sheetSizes.A4.widthMm - page.marginLeftMm - page.marginRightMm
export const LINE_MM = page.baselineMm
/** From the top of a line to its baseline. */
export const BASELINE_MM = 2.9

/** Where things stand on a sheet. Lines count from 0 at the top of the text field. */
export interface PageGeometry {
  readonly widthMm: number
  readonly heightMm: number
  readonly leftMm: number
  readonly topMm: number
  readonly lines: number
  readonly mainLeftMm: number
  readonly mainWidthMm: number
  readonly sideWidthMm: number
}

export function pageGeometry(paper: Paper): PageGeometry {
  const { widthMm, heightMm } = sheetSizes[paper]
  const leftMm = page.marginLeftMm + (widthMm - sheetSizes.A4.widthMm) / 2
  return {
    widthMm,
    heightMm,
    leftMm,
    topMm: page.marginTopMm,
    lines: Math.floor((heightMm - page.marginTopMm - page.marginFootMm) / LINE_MM),
    mainLeftMm: leftMm + page.sideColumnMm + page.gutterMm,
    mainWidthMm: FIELD_WIDTH_MM - page.sideColumnMm - page.gutterMm,
    sideWidthMm: page.sideColumnMm,
  }
}
