import { memo, type RefObject } from 'react'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { useHovered } from './HoveredPanel.tsx'
import type { PlanScale } from './plan-scale.ts'
import { outlinesOnSheet } from './sheet-outlines.ts'

interface PanelsLitProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
  readonly inHand: string | null
  readonly width: number
  readonly height: number
  readonly drawing: RefObject<Element | null>
}

/** The panel in hand in the accent, and the one under the pointer in ink, in every view they show in: one path each. */
export const PanelsLit = memo(function PanelsLit({ sheet, scale, inHand, width, height, drawing }: PanelsLitProps) {
  const hovered = useHovered(drawing)
  return (
    <svg className="plan-drawing plan-layer plan-lit" width={width} height={height} aria-hidden="true">
      <g className="moves">
        <g transform={`translate(${scale.originX} ${scale.originY}) scale(${scale.pixelsPerMm})`}>
          <path className="edge-hovered" d={outlinesOnSheet(sheet, hovered === inHand ? null : hovered)} />
          <path className="edge-in-hand" d={outlinesOnSheet(sheet, inHand)} />
        </g>
      </g>
    </svg>
  )
})
