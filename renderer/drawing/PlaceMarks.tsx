import { memo } from 'react'
import type { PlaceMark, PlanView } from '../../shared-types/figure.ts'
import { KeepsSize } from './KeepsSize.tsx'
import { onScreen, type PlanScale } from './plan-scale.ts'

interface PlaceMarksProps {
  readonly view: PlanView
  readonly places: readonly PlaceMark[]
  readonly scale: PlanScale
}

/** Where readings and exhibits stand: a dot for a spot, an open square for an exhibit. */
export const PlaceMarks = memo(function PlaceMarks({ view, places, scale }: PlaceMarksProps) {
  return (
    <g className="place-marks">
      {places.map((place) => (
        <KeepsSize key={`${place.kind}${place.number}`} {...onScreen(view, place.at, scale)}>
          {place.kind === 'spot' ? (
            <circle className="place-spot" r={1.6} />
          ) : (
            <rect className="place-exhibit" x={-2.5} y={-2.5} width={5} height={5} />
          )}
        </KeepsSize>
      ))}
    </g>
  )
})
