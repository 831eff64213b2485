import { useLayoutEffect, useRef } from 'react'
import type { SheetSketch } from '../../../shared-types/reference-fact.ts'

const SIDE = 100
/** Paper left over and under what is drawn, in units of the sketch. */
const MARGIN = 3

/** Takes away the empty paper over and under drawings that stand in one row, from all alike, so that they compare. */
function cropTogether(drawings: readonly SVGSVGElement[]): void {
  const boxes = drawings.map((drawing) => drawing.getBBox()).filter(({ width, height }) => width > 0 || height > 0)
  if (boxes.length === 0) return
  const top = Math.max(0, Math.min(...boxes.map(({ y }) => y)) - MARGIN)
  const foot = Math.min(SIDE, Math.max(...boxes.map(({ y, height }) => y + height)) + MARGIN)
  for (const drawing of drawings) drawing.setAttribute('viewBox', `0 ${top} ${SIDE} ${foot - top}`)
}

/** For the element around sketches of one row. */
export function useCroppedSketches<Around extends HTMLElement>() {
  const around = useRef<Around>(null)
  useLayoutEffect(() => cropTogether([...(around.current?.querySelectorAll<SVGSVGElement>('.sheet-sketch') ?? [])]), [])
  return around
}

/** A drawing of a sheet in ink: outlines, thin lines, and in the accent the place to look at. */
export function TellSketch({ sketch, className }: { readonly sketch: SheetSketch; readonly className: string }) {
  const drawn = [
    ['fine', sketch.fine],
    ['outline', sketch.paths],
    ['marked', sketch.marked],
  ] as const
  return (
    <svg className={`sheet-sketch ${className}`} viewBox={`0 0 ${SIDE} ${SIDE}`} role="img" aria-label={sketch.words}>
      {drawn.map(([weight, paths]) => (
        <path key={weight} className={`sketch-${weight}`} d={paths.join('')} />
      ))}
    </svg>
  )
}

/** A sketch of a place with the words that say what it shows. */
export function PlaceSketch({ sketch }: { readonly sketch: SheetSketch }) {
  const around = useCroppedSketches<HTMLElement>()
  return (
    <figure ref={around} className="place-figure">
      <TellSketch sketch={sketch} className="place-sketch" />
      <figcaption className="quiet" aria-hidden="true">
        {sketch.words}
      </figcaption>
    </figure>
  )
}
