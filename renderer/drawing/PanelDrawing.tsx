import { type KeyboardEvent, memo, type PointerEvent, useId, useMemo } from 'react'
import type { ExtentMark, InkLine, PanelMark, PlanFigure, PlanPanel, PlanView } from '../../shared-types/figure.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import { ExtentEdge, ExtentGround } from './ExtentShape.tsx'
import { HatchPatterns, hatchFill } from './HatchPatterns.tsx'
import { MapCells, type PanelMap } from './MapCells.tsx'
import { boxOf, outlinePoints, type ViewBox } from './outline-shape.ts'
import { type Box, labelBox, type PanelSpot, spotLabels } from './spot-labels.ts'
import { useLetterScale, useSheetWidth } from './use-sheet-width.ts'

/** The view in which a panel is largest, to draw it by itself. */
export function largestPanelView(
  figure: PlanFigure,
  panelId: string,
): { view: PlanView; panel: PlanPanel } | undefined {
  return figure.sheets
    .flatMap((sheet) => sheet.views)
    .flatMap((view) => {
      const panel = view.panels.find((own) => own.panelId === panelId)
      return panel === undefined ? [] : [{ view, panel }]
    })
    .sort((a, b) => b.panel.areaMm2 - a.panel.areaMm2)[0]
}

interface PanelDrawingProps {
  readonly view: PlanView
  readonly panel: PlanPanel
  readonly mark?: PanelMark | undefined
  readonly extents: readonly Pick<ExtentMark, 'finding' | 'shape' | 'points' | 'hatch'>[]
  readonly spots: readonly PanelSpot[]
  /** A map of the panel in this view, drawn under its ink. */
  readonly map?: PanelMap | undefined
  /** Cross moved by the keyboard; null while nothing is being drawn. */
  readonly cursor: PlanPoint | null
  readonly label: string
  readonly onKeyDown?: (event: KeyboardEvent) => void
  readonly onPoint?: (point: PlanPoint, event: PointerEvent) => void
}

const LEAST_HEIGHT_PX = 128
const MARGIN_PX = 12
/** From the middle of the cross to the end of its arms, px. */
const CROSS_PX = 9

/** What lies under a label, so that no line joins its letter and its figure; a little lower than its room. */
const LabelGround = ({ box: { left, right, top, foot } }: { readonly box: Box }) => (
  <rect x={left} y={top + 1} width={right - left} height={foot - top - 1} />
)

/** Room of the cross, which no label covers. */
const crossBox = ({ x, y }: { readonly x: number; readonly y: number }): Box => ({
  left: x - CROSS_PX,
  right: x + CROSS_PX,
  top: y - CROSS_PX,
  foot: y + CROSS_PX,
})

const inkOfViews = new WeakMap<PlanView, readonly { readonly line: InkLine; readonly box: ViewBox }[]>()

/** The detail and form lines of a view with their boxes, worked out once for each view. */
function detailsOf(view: PlanView): readonly { readonly line: InkLine; readonly box: ViewBox }[] {
  const known = inkOfViews.get(view)
  if (known !== undefined) return known
  const details = view.ink
    .filter((line) => line.weight === 'detail' || line.weight === 'form')
    .map((line) => ({ line, box: boxOf(outlinePoints(line.path)) }))
  inkOfViews.set(view, details)
  return details
}

const meets = (a: ViewBox, b: ViewBox): boolean =>
  a.u < b.u + b.width && b.u < a.u + a.width && a.v < b.v + b.height && b.v < a.v + a.height

interface PanelInkProps {
  readonly view: PlanView
  readonly box: ViewBox
  readonly clip: string
}

/** Detail lines that lie within the panel's box, so that it is known again. */
const PanelInk = memo(function PanelInk({ view, box, clip }: PanelInkProps) {
  return (
    <g clipPath={`url(#${clip})`}>
      {detailsOf(view)
        .filter((detail) => meets(detail.box, box))
        .map(({ line }) => line)
        .map((line) => (
          <path key={line.path} className={`ink ink-${line.weight}`} d={line.path} />
        ))}
    </g>
  )
})

function hatchesOf(mark: PanelMark | undefined, extents: readonly Pick<ExtentMark, 'hatch'>[]): string {
  return [mark?.hatch, ...extents.map(({ hatch }) => hatch)].filter((hatch) => hatch).join(' ')
}

/** One panel by itself, enlarged: its outline in the accent, what was found on it, and where it was read. */
export function PanelDrawing(props: PanelDrawingProps) {
  const { view, panel, mark, cursor } = props
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const box = useMemo(() => boxOf(outlinePoints(panel.outline)), [panel.outline])
  const width = useSheetWidth()
  const letters = useLetterScale()
  const mostHeight = Math.max(LEAST_HEIGHT_PX, width / 2)
  const scale = Math.min((width - 2 * MARGIN_PX) / box.width, (mostHeight - 2 * MARGIN_PX) / box.height)
  const height = Math.max(60, box.height * scale + 2 * MARGIN_PX)
  const left = (width - box.width * scale) / 2 - box.u * scale
  const top = MARGIN_PX - box.v * scale + Math.max(0, (60 - 2 * MARGIN_PX - box.height * scale) / 2)
  const fill = mark === undefined ? null : hatchFill(prefix, mark.hatch)
  const place = (point: PlanPoint) => ({ x: left + point.u * scale, y: top + point.v * scale })
  const cross = cursor === null ? null : place(cursor)
  const toPoint = (event: PointerEvent<HTMLButtonElement>): PlanPoint => {
    const frame = event.currentTarget.getBoundingClientRect()
    return { u: (event.clientX - frame.left - left) / scale, v: (event.clientY - frame.top - top) / scale }
  }
  const drawn = (
    <>
      <HatchPatterns prefix={prefix} pixelsPerUnit={scale} only={hatchesOf(mark, props.extents)} />
      <clipPath id={`${prefix}-panel`}>
        <path d={panel.outline} />
      </clipPath>
      <g transform={`translate(${left} ${top}) scale(${scale})`}>
        {fill === null ? null : <path className="panel-hatch" d={panel.outline} fill={fill} />}
        {props.map === undefined ? null : <MapCells map={props.map} prefix={prefix} />}
        {props.extents.map((extent) => (
          <ExtentGround key={extent.finding} extent={extent} prefix={prefix} />
        ))}
        <PanelInk view={view} box={box} clip={`${prefix}-panel`} />
        {props.extents.map((extent) => (
          <ExtentEdge key={extent.finding} extent={extent} />
        ))}
        <path className={mark?.edge === 'dotted' ? 'edge-in-hand is-dotted' : 'edge-in-hand'} d={panel.outline} />
      </g>
      {spotLabels(props.spots, place, width, letters, cross === null ? [] : [crossBox(cross)], height).map((label) => (
        <g key={label.letter} className="panel-spot">
          {label.text === '' ? null : <LabelGround box={labelBox(label, letters)} />}
          <circle cx={label.x} cy={label.y} r={2.2} />
          <text x={label.textX} y={label.textY}>
            {label.text}
          </text>
        </g>
      ))}
      {cross === null ? null : (
        <path
          className="panel-cross"
          d={`M${cross.x - CROSS_PX} ${cross.y} h6 m6 0 h6 M${cross.x} ${cross.y - CROSS_PX} v6 m0 6 v6`}
        />
      )}
    </>
  )
  if (props.onPoint === undefined) {
    return (
      <svg className="plan-drawing panel-drawing" width={width} height={height} role="img" aria-label={props.label}>
        {drawn}
      </svg>
    )
  }
  return (
    <button
      type="button"
      className="panel-pad"
      onKeyDown={props.onKeyDown}
      onPointerDown={(event) => props.onPoint?.(toPoint(event), event)}
    >
      <svg className="plan-drawing panel-drawing" width={width} height={height} role="img" aria-label={props.label}>
        {drawn}
      </svg>
    </button>
  )
}
