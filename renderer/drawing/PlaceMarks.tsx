import { memo } from 'react'
import type { PlaceMark, PlanView } from '../../shared-types/figure.ts'
import { decoration } from './decoration.ts'
import { onScreen, type PlanScale } from './plan-scale.ts'

interface PlaceMarksProps {
  readonly view: PlanView
  readonly places: readonly PlaceMark[]
  readonly scale: PlanScale
}

/** Where readings and exhibits stand: a dot for a spot, an open square for an exhibit. */
export const PlaceMarks = memo(function PlaceMarks({ view, places, scale }: PlaceMarksProps) {
  return (
    <g className="place-marks" {...decoration}>
      {places.map((place) => {
        const { x, y } = onScreen(view, place.at, scale)
        const key = `${place.kind}${place.number}`
        if (place.kind === 'spot') return <circle key={key} className="place-spot" cx={x} cy={y} r={2} />
        return <rect key={key} className="place-exhibit" x={x - 2.5} y={y - 2.5} width={5} height={5} />
      })}
    </g>
  )
})
