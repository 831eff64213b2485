import { type RefObject, useLayoutEffect } from 'react'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { type LookSource, movementTo, type Room } from './plan-scale.ts'

/** Moves every group of the drawing that follows the look; strokes, hatches, rings and words keep their size. */
function move(drawing: HTMLElement, { zoom, x, y }: { zoom: number; x: number; y: number }): void {
  for (const group of drawing.querySelectorAll('.moves')) {
    group.setAttribute('transform', `matrix(${zoom} 0 0 ${zoom} ${x.toFixed(2)} ${y.toFixed(2)})`)
  }
  const unzoom = String(1 / zoom)
  if (drawing.style.getPropertyValue('--unzoom') === unzoom) return
  drawing.style.setProperty('--unzoom', unzoom)
  drawing.style.setProperty('--zoom', String(zoom))
  for (const pattern of drawing.querySelectorAll<SVGPatternElement>('.moves pattern')) {
    const { turn, unit } = pattern.dataset
    pattern.setAttribute('patternTransform', `scale(${1 / (Number(unit) * zoom)}) rotate(${turn})`)
  }
}

/**
 * Shows a drawing as its look says, and follows it from picture to picture without rendering anything anew: zooming and
 * panning change one transform. `drawing` holds everything that is drawn for the whole sheet at this size of room.
 */
export function useMovement(
  drawing: RefObject<HTMLElement | null>,
  sheet: PlanSheet,
  { width, height }: Room,
  look: LookSource,
): void {
  useLayoutEffect(() => {
    const element = drawing.current
    if (element === null) return
    let asked = 0
    const show = () => {
      asked = 0
      move(element, movementTo(sheet, { width, height }, look.now()))
    }
    let shown = look.now()
    element.style.removeProperty('--unzoom')
    show()
    const forget = look.subscribe(() => {
      if (look.now() === shown) return
      shown = look.now()
      if (asked === 0) asked = requestAnimationFrame(show)
    })
    return () => {
      cancelAnimationFrame(asked)
      forget()
    }
  }, [drawing, sheet, width, height, look])
}
