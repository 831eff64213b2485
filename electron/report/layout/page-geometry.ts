import type { Paper } from '../../../shared-types/edition.ts'
import { page, paperSizes } from '../../../shared-types/tokens.ts'

/** Width of the text field, mm: 170 on either sheet, so that figures keep their round scale. */
export const FIELD_WIDTH_MM = paperSizes.A4.widthMm - page.marginLeftMm - page.marginRightMm
export const LINE_MM = page.baselineMm
/** From the top of a line to its baseline. */
export const BASELINE_MM = page.letterBaselineMm

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
  const { widthMm, heightMm } = paperSizes[paper]
  const leftMm = page.marginLeftMm + (widthMm - paperSizes.A4.widthMm) / 2
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
