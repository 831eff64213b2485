import type { ReactNode } from 'react'

interface KeepsSizeProps {
  /** Its place while the whole sheet is shown, px; where it stands after that is set as the sheet is moved. */
  readonly x: number
  readonly y: number
  readonly className?: string
  readonly panelId?: string
  readonly children: ReactNode
}

/**
 * What stands at a place of the drawing and keeps its own size however near the reader has come. Never inside what grows
 * with the sheet: it is moved and not scaled, so its words need not be laid out again.
 */
export function KeepsSize({ x, y, className, panelId, children }: KeepsSizeProps) {
  const [atX, atY] = [x.toFixed(2), y.toFixed(2)]
  return (
    <g
      className={className === undefined ? 'keeps-size' : `keeps-size ${className}`}
      data-x={atX}
      data-y={atY}
      data-panel={panelId}
      transform={`translate(${atX} ${atY})`}
    >
      {children}
    </g>
  )
}

/** A stroke of a scale: its place while the whole sheet is shown, how wide it lies about it and how far it goes down, px. */
export interface Tick {
  readonly x: number
  readonly y: number
  readonly along: number
  readonly down: number
}

/** Path of ticks given as `x y along down` each, after the sheet was moved. */
export function ticksPath(ticks: string, zoom: number, byX: number, byY: number): string {
  const figures = ticks.split(' ').map(Number)
  let path = ''
  for (let at = 0; at + 3 < figures.length; at += 4) {
    const [x = 0, y = 0, along = 0, down = 0] = figures.slice(at, at + 4)
    path += `M${(zoom * x + byX - along / 2).toFixed(2)} ${(zoom * y + byY).toFixed(2)}l${along} ${down}`
  }
  return path
}

/** Strokes that keep their length, as one path. */
export function Ticks({ ticks }: { readonly ticks: readonly Tick[] }) {
  const text = ticks.map(({ x, y, along, down }) => `${x.toFixed(2)} ${y.toFixed(2)} ${along} ${down}`).join(' ')
  return <path className="measure-line keeps-ticks" data-ticks={text} d={ticksPath(text, 1, 0, 0)} />
}
