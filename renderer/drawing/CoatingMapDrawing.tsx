import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import type { CutLine } from '../../shared-types/coating-cut.ts'
import type { CoatingMap, MapLayer } from '../../shared-types/coating-map.ts'
import type { PlanPanel } from '../../shared-types/figure.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import { type CutEnd, CutEnds } from './CutEnds.tsx'
import { contourFigures, crossBoxes, endBoxes } from './contour-figures.ts'
import { MapPaper } from './MapPaper.tsx'
import { MapSpots } from './MapSpots.tsx'
import { mapSheet } from './map-sheet.ts'
import { boxOf, outlinePoints } from './outline-shape.ts'
import type { OwnLook } from './own-look.ts'
import { hearGestures } from './plan-gestures.ts'
import { lookAbout } from './plan-scale.ts'
import { type PanelSpot, spotLabels } from './spot-labels.ts'
import { useMapHearing } from './use-map-hearing.ts'
import { useMovement } from './use-movement.ts'
import { useOwnWidth } from './use-own-width.ts'
import { useLetterScale } from './use-sheet-width.ts'
import './plan-layers.css'

interface CoatingMapDrawingProps {
  readonly panel: PlanPanel
  readonly map: CoatingMap
  /** What is drawn over the panel; none draws the outline with its spots alone. */
  readonly layer: MapLayer | undefined
  readonly spots: readonly PanelSpot[]
  readonly label: string
  readonly look: OwnLook
  /** All that is known of a spot, by its letter. */
  readonly wordsOf: (letter: string) => string
  readonly cut: {
    readonly line: CutLine | null
    readonly nameOf: (end: CutEnd) => string
    readonly onMove: (end: CutEnd, to: PlanPoint) => void
    /** While a line is being drawn anew, a press on the panel sets its next end. */
    readonly onPick: ((at: PlanPoint) => void) | null
  }
}

/** Labels are set anew for the zoom the reader has come to, once the drawing has rested. */
const REST_MS = 140

function useRestedZoom(look: OwnLook): number {
  const [zoom, setZoom] = useState(1)
  useEffect(() => {
    let waiting: ReturnType<typeof setTimeout> | undefined
    const forget = look.subscribe(() => {
      clearTimeout(waiting)
      waiting = setTimeout(() => setZoom(look.now().zoom), REST_MS)
    })
    return () => {
      clearTimeout(waiting)
      forget()
    }
  }, [look])
  return zoom
}

/** One panel with its map, moved like the body plan; spots say their values when reached, and the line of a cut has ends to move. */
export function CoatingMapDrawing(props: CoatingMapDrawingProps) {
  const { panel, map, layer, spots, label, look, wordsOf, cut } = props
  const [frame, width] = useOwnWidth<HTMLDivElement>()
  const drawing = useRef<HTMLDivElement>(null)
  const letters = useLetterScale()
  const zoom = useRestedZoom(look)
  const box = useMemo(() => boxOf(outlinePoints(panel.outline)), [panel.outline])
  const sheet = useMemo(() => mapSheet(box, width), [box, width])
  const [reached, setReached] = useState<string | null>(null)
  const marked = useMemo(
    () => new Set(map.spots.filter((spot) => spot.marked).map(({ spot }) => `R${spot}`)),
    [map.spots],
  )
  const nearer = useCallback(
    (point: PlanPoint) => {
      const { x, y } = sheet.place(point)
      return { x: x * zoom, y: y * zoom }
    },
    [sheet, zoom],
  )
  const across = sheet.room.width * zoom
  const crosses = useMemo(() => crossBoxes(map.next, nearer, letters), [map.next, nearer, letters])
  const labels = useMemo(
    () => spotLabels(spots, nearer, across, letters, crosses),
    [spots, nearer, across, letters, crosses],
  )
  const contours = useMemo(() => {
    const besides = [...crosses, ...endBoxes(cut.line, nearer, letters)]
    return layer === undefined ? [] : contourFigures(layer, labels, nearer, across, letters, besides)
  }, [layer, labels, crosses, cut.line, nearer, across, letters])
  const placed = useMemo(
    () => ({ map, layer, labels, contours, line: cut.line }),
    [map, layer, labels, contours, cut.line],
  )
  useMovement(drawing, sheet.sheet, sheet.room, look, placed, null)
  useEffect(() => {
    const element = frame.current
    if (element === null) return
    // The page scrolls under a passing wheel; the map takes it once it was pressed, until the pointer leaves.
    let pressed = false
    const hears = new AbortController()
    const { signal } = hears
    element.addEventListener('pointerdown', () => (pressed = true), { signal })
    element.addEventListener('pointerleave', () => (pressed = false), { signal })
    const isMine = () => pressed || look.now().zoom > 1
    const forget = look.subscribe(() => element.toggleAttribute('data-moved', look.now().zoom > 1))
    const leave = hearGestures(
      element,
      (step) => look.change((now) => lookAbout(sheet.sheet, sheet.room, now, step)),
      isMine,
    )
    return () => {
      hears.abort()
      forget()
      leave()
    }
  }, [frame, look, sheet])
  const pointOf = useCallback(
    (event: { readonly clientX: number; readonly clientY: number }): PlanPoint => {
      const { left = 0, top = 0 } = frame.current?.getBoundingClientRect() ?? {}
      const { u, v } = sheet.pointAt(event.clientX - left, event.clientY - top, look.now())
      return { u: Math.round(u), v: Math.round(v) }
    },
    [frame, look, sheet],
  )
  const first = reached ?? spots[0]?.letter ?? null
  const { line, onPick, onMove } = cut
  const onReach = (letter: string, inFocus: boolean) => {
    setReached(letter)
    const at = spots.find((spot) => spot.letter === letter)?.at
    if (!inFocus || at === undefined) return
    look.change((now) => (now.zoom === 1 ? now : { ...now, middle: sheet.onSheet(at) }))
  }
  useMapHearing(drawing, { line, pointOf, onMove, onPick, onReach })
  return (
    <div
      ref={frame}
      className={onPick === null ? 'coating-map' : 'coating-map is-picked'}
      style={{ height: sheet.room.height }}
    >
      <div className="plan-layers" ref={drawing}>
        <MapPaper {...{ panel, layer, sheet, letters, contours, zoom, label }} next={map.next} />
        <svg className="plan-drawing plan-layer plan-reached" {...sheet.room} role="presentation">
          {line === null ? null : (
            <g className="moves">
              <path
                className="cut-line"
                transform={sheet.transform}
                d={`M${line.from.u} ${line.from.v}L${line.to.u} ${line.to.v}`}
              />
            </g>
          )}
          <MapSpots labels={labels} zoom={zoom} marked={marked} reached={first} wordsOf={wordsOf} />
          {line === null ? null : <CutEnds line={line} sheet={sheet} nameOf={cut.nameOf} />}
        </svg>
      </div>
      {reached === null ? null : <p className="plan-hovered map-reached">{wordsOf(reached)}</p>}
    </div>
  )
}

/** What each colour of a layer stands for, thin to thick. */
export function MapLegend({ layer }: { readonly layer: MapLayer }) {
  const { colours } = layer
  const { limits, unit } = layer.printed
  const word = (level: number): string => {
    const [from, to] = [limits[level - 1], limits[level]]
    if (from === undefined) return `under ${to}`
    return to === undefined ? `over ${from}\u202f${unit}` : `${from} to ${to}`
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
