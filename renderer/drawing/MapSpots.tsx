import { memo } from 'react'
import { KeepsSize } from './KeepsSize.tsx'
import type { SpotLabel } from './spot-labels.ts'

interface MapSpotsProps {
  readonly labels: readonly SpotLabel[]
  /** How much nearer the reader has come than when everything is shown: places are told for all of it. */
  readonly zoom: number
  readonly marked: ReadonlySet<string>
  /** Letter of the spot that Tab comes to. */
  readonly reached: string | null
  readonly wordsOf: (letter: string) => string
}

/** A shape in an SVG has no role by itself. */
const asPoint = { role: 'img' } as const

/** Spots read, with their figures where there is room; each says its value when it is reached. */
export const MapSpots = memo(function MapSpots({ labels, zoom, marked, reached, wordsOf }: MapSpotsProps) {
  return labels.map(({ letter, x, y, text, textX, textY }) => (
    <KeepsSize key={letter} x={x / zoom} y={y / zoom} className="panel-spot map-spot">
      <g
        className="map-spot-reached"
        {...asPoint}
        aria-label={wordsOf(letter)}
        tabIndex={letter === reached ? 0 : -1}
        data-spot={letter}
      >
        <circle className="map-spot-room" r={9} />
        <circle r={2.6} />
        {marked.has(letter) ? <path className="map-marked" d="M-5 5l10 -10" /> : null}
        <text x={textX - x} y={textY - y}>
          {text}
        </text>
      </g>
    </KeepsSize>
  ))
})
