import { memo, useId } from 'react'
import type { CoatingMap, MapLayer } from '../../shared-types/coating-map.ts'
import type { PlanPanel } from '../../shared-types/figure.ts'
import type { ContourFigure } from './contour-figures.ts'
import { KeepsSize } from './KeepsSize.tsx'
import type { MapSheet } from './map-sheet.ts'

interface MapPaperProps {
  readonly panel: PlanPanel
  readonly layer: MapLayer | undefined
  readonly next: CoatingMap['next']
  readonly sheet: MapSheet
  readonly letters: number
  readonly contours: readonly ContourFigure[]
  /** How much nearer the reader has come than when everything is shown: places of figures are told for that. */
  readonly zoom: number
  readonly label: string
}

const CROSS_PX = 5
/** From the middle of a figure down to its baseline. */
const MIDDLE_PX = 4
const cross = `M${-CROSS_PX} 0h${2 * CROSS_PX}M0 ${-CROSS_PX}v${2 * CROSS_PX}`

/** Letter of a place to read next: a, b, c. */
export const nextLetter = (index: number): string => String.fromCharCode(97 + index)

/** Flat bands of cividis cut to the panel, figures of their contours, crosses where to read next. */
export const MapPaper = memo(function MapPaper(props: MapPaperProps) {
  const { panel, layer, next, sheet, letters, contours, zoom, label } = props
  const clip = useId().replace(/[^a-z0-9]/gi, '')
  const { width, height } = sheet.room
  return (
    <svg className="plan-drawing plan-layer" width={width} height={height} role="img" aria-label={label}>
      <clipPath id={clip}>
        <path d={panel.outline} />
      </clipPath>
      <g className="moves">
        <g transform={sheet.transform}>
          <g clipPath={`url(#${clip})`}>
            {layer?.bands.map(({ level, path, colour }) => (
              <path key={level} className="panel-hatch map-band" d={path} fill={colour} />
            ))}
          </g>
          <path className="edge-in-hand" d={panel.outline} />
        </g>
      </g>
      {contours.map(({ level, text, x, y }) => (
        <KeepsSize key={level} x={x / zoom} y={y / zoom}>
          <text className="map-contour" textAnchor="middle" y={MIDDLE_PX * letters}>
            {text}
          </text>
        </KeepsSize>
      ))}
      {next.map(({ at }, index) => (
        <KeepsSize key={`${at.u} ${at.v}`} {...sheet.place(at)} className="map-next">
          <path d={cross} className="map-next-ground" />
          <path d={cross} />
          <text x={CROSS_PX + 2} y={CROSS_PX + 6 * letters}>
            {nextLetter(index)}
          </text>
        </KeepsSize>
      ))}
    </svg>
  )
})
