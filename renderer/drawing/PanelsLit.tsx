import { memo, type RefObject } from 'react'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { useHovered } from './HoveredPanel.tsx'
import { type PlanScale, viewTransform } from './plan-scale.ts'

interface LitPanelProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
  readonly panelId: string
  readonly className: string
}

/** The outlines of one panel in every view it shows in. */
const LitPanel = memo(function LitPanel({ sheet, scale, panelId, className }: LitPanelProps) {
  return sheet.views.flatMap((view) =>
    view.panels
      .filter((panel) => panel.panelId === panelId)
      .map(({ outline }) => (
        <path key={view.id} className={className} transform={viewTransform(view, scale)} d={outline} />
      )),
  )
})

interface PanelsLitProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
  readonly inHand: string | null
  readonly width: number
  readonly height: number
  readonly drawing: RefObject<Element | null>
}

/** The panel in hand in the accent, and the one under the pointer in ink. */
export const PanelsLit = memo(function PanelsLit({ sheet, scale, inHand, width, height, drawing }: PanelsLitProps) {
  const hovered = useHovered(drawing)
  return (
    <svg className="plan-drawing plan-layer" width={width} height={height} aria-hidden="true">
      <g className="moves">
        {hovered === null || hovered === inHand ? null : (
          <LitPanel sheet={sheet} scale={scale} panelId={hovered} className="edge-hovered" />
        )}
        {inHand === null ? null : <LitPanel sheet={sheet} scale={scale} panelId={inHand} className="edge-in-hand" />}
      </g>
    </svg>
  )
})
