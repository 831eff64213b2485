import { useId, useMemo } from 'react'
import type { CoatingMap, MapLayer } from '../../shared-types/coating-map.ts'
import type { PlanPanel } from '../../shared-types/figure.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import { boxOf, outlinePoints } from './outline-shape.ts'
import { type PanelSpot, spotLabels } from './spot-labels.ts'
import { useOwnWidth } from './use-own-width.ts'
import { useLetterScale } from './use-sheet-width.ts'

interface CoatingMapDrawingProps {
  readonly panel: PlanPanel
  readonly map: CoatingMap
  /** What is drawn over the panel; none draws the outline with its spots alone. */
  readonly layer: MapLayer | undefined
  readonly spots: readonly PanelSpot[]
  readonly label: string
}

const TALLEST_PX = 340
const MARGIN_PX = 18
const CROSS_PX = 5

/** One panel with flat bands of cividis, the spots read with their figures, and crosses where to read next. */
export function CoatingMapDrawing({ panel, map, layer, spots, label }: CoatingMapDrawingProps) {
  const clip = useId().replace(/[^a-z0-9]/gi, '')
  const [frame, width] = useOwnWidth<HTMLDivElement>()
  const letters = useLetterScale()
  const box = useMemo(() => boxOf(outlinePoints(panel.outline)), [panel.outline])
  const scale = Math.max(
    0.001,
    Math.min((width - 2 * MARGIN_PX) / box.width, (TALLEST_PX - 2 * MARGIN_PX) / box.height),
  )
  const height = Math.max(80, box.height * scale + 2 * MARGIN_PX)
  const left = (width - box.width * scale) / 2 - box.u * scale
  const top = (height - box.height * scale) / 2 - box.v * scale
  const marked = new Set(map.spots.filter((spot) => spot.marked).map(({ spot }) => `R${spot}`))
  const place = (point: PlanPoint) => ({ x: left + point.u * scale, y: top + point.v * scale })
  return (
    <div ref={frame} className="coating-map">
      <svg className="plan-drawing" width={width} height={height} role="img" aria-label={label}>
        <clipPath id={clip}>
          <path d={panel.outline} />
        </clipPath>
        <g transform={`translate(${left} ${top}) scale(${scale})`}>
          <g clipPath={`url(#${clip})`}>
            {layer?.bands.map(({ level, path, colour }) => (
              <path key={level} className="panel-hatch map-band" d={path} fill={colour} />
            ))}
          </g>
          <path className="edge-in-hand" d={panel.outline} />
        </g>
        {layer?.bands.map(({ level, from, label: at }) => {
          if (at === null) return null
          const { x, y } = place(at)
          return (
            <text key={level} className="map-contour" x={x} y={y} textAnchor="middle">
              {from}
            </text>
          )
        })}
        {map.next.map(({ at }, index) => {
          const { x, y } = place(at)
          return (
            <g key={`${at.u} ${at.v}`} className="map-next">
              <path
                d={`M${x - CROSS_PX} ${y}h${2 * CROSS_PX}M${x} ${y - CROSS_PX}v${2 * CROSS_PX}`}
                className="map-next-ground"
              />
              <path d={`M${x - CROSS_PX} ${y}h${2 * CROSS_PX}M${x} ${y - CROSS_PX}v${2 * CROSS_PX}`} />
              <text x={x + CROSS_PX + 2} y={y + CROSS_PX + 6 * letters}>
                {nextLetter(index)}
              </text>
            </g>
          )
        })}
        {spotLabels(spots, place, width, letters).map((spot) => (
          <g key={spot.letter} className="panel-spot map-spot">
            <circle cx={spot.x} cy={spot.y} r={2.6} />
            {marked.has(spot.letter) ? <path className="map-marked" d={`M${spot.x - 5} ${spot.y + 5}l10 -10`} /> : null}
            <text x={spot.textX} y={spot.textY}>
              {spot.text}
            </text>
          </g>
        ))}
      </svg>
    </div>
  )
}

/** Letter of a place to read next: a, b, c. */
export const nextLetter = (index: number): string => String.fromCharCode(97 + index)

/** What each colour of a layer stands for, thin to thick. */
export function MapLegend({ layer }: { readonly layer: MapLayer }) {
  const { limits, unit, colours } = layer
  const word = (level: number): string => {
    const [from, to] = [limits[level - 1], limits[level]]
    if (from === undefined) return `under ${to}`
    return to === undefined ? `over ${from} ${unit}` : `${from} to ${to}`
  }
  return (
    <ul className="map-legend">
      {colours.map((colour, level) => (
        <li key={word(level)}>
          <svg width="22" height="10" aria-hidden="true">
            <rect className="map-swatch" width="22" height="10" fill={colour} />
          </svg>
          {word(level)}
        </li>
      ))}
    </ul>
  )
}
