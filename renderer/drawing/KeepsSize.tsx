import type { ReactNode } from 'react'

/** What stands at a place of the drawing and keeps its own size however near the reader has come. */
export function KeepsSize({
  x,
  y,
  children,
}: {
  readonly x: number
  readonly y: number
  readonly children: ReactNode
}) {
  return (
    <g transform={`translate(${x.toFixed(2)} ${y.toFixed(2)})`}>
      <g className="keeps-size">{children}</g>
    </g>
  )
}
