import { type RefObject, useLayoutEffect, useRef } from 'react'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { typeScale } from '../../shared-types/tokens.ts'
import { type LookSource, movementTo, type Room } from './plan-scale.ts'

interface Movement {
  readonly zoom: number
  readonly x: number
  readonly y: number
}

/** A gesture has ended when no new look came for so long. */
const REST_MS = 110

/** Size of callout text that places of callouts are chosen for, px. */
const CALLOUT_TEXT_PX = typeScale.callout[0]

/** How much larger than that the words of a drawing stand, as the sheet and the window ask. */
export function typeFactorOf(drawing: Element): number {
  return (Number.parseFloat(getComputedStyle(drawing).fontSize) || CALLOUT_TEXT_PX) / CALLOUT_TEXT_PX
}

/** Writes only what differs: an attribute written again is laid out again. */
function put(elements: Iterable<Element>, name: string, textFor: (one: Element) => string): void {
  for (const one of elements) {
    const text = textFor(one)
    if (one.getAttribute(name) !== text) one.setAttribute(name, text)
  }
}

/** Draws everything that follows the look in its right weights; what keeps its size is turned back. */
function draw(drawing: HTMLElement, { zoom, x, y }: Movement): void {
  const matrix = `matrix(${zoom} 0 0 ${zoom} ${x.toFixed(2)} ${y.toFixed(2)})`
  put(drawing.querySelectorAll('.moves'), 'transform', () => matrix)
  const unzoom = `scale(${1 / zoom})`
  put(drawing.querySelectorAll('.keeps-size'), 'transform', () => unzoom)
  put(drawing.querySelectorAll('.moves pattern'), 'patternTransform', (pattern) => {
    const [unit, turn] = [pattern.getAttribute('data-unit'), pattern.getAttribute('data-turn')]
    return `scale(${1 / (Number(unit) * zoom)}) rotate(${turn})`
  })
  drawing.querySelector<SVGGElement>('.plan-targets')?.style.setProperty('--zoom', String(zoom))
}

/** Carries the picture that was drawn for one movement to where another wants it; whole pixels where it keeps its size. */
function carry(drawing: HTMLElement, drawn: Movement, wanted: Movement): void {
  const ratio = wanted.zoom / drawn.zoom
  const by = Math.abs(ratio - 1) < 1e-6 ? 1 : ratio
  const whole = (px: number) => (by === 1 ? Math.round(px) : px).toFixed(2)
  const [x, y] = [whole(wanted.x - drawn.x * by), whole(wanted.y - drawn.y * by)]
  drawing.style.transform =
    by === 1 && Number(x) === 0 && Number(y) === 0 ? '' : `matrix(${by}, 0, 0, ${by}, ${x}, ${y})`
}

/**
 * Shows a drawing as its look says and follows it without rendering anything anew: the finished picture is carried along
 * at once, and drawn again in its right weights the moment a zoom rests; a picture that was only moved is right as it
 * is. `content` changes with what is drawn.
 */
export function useMovement(
  drawing: RefObject<HTMLElement | null>,
  sheet: PlanSheet,
  { width, height }: Room,
  look: LookSource,
  content: unknown,
): void {
  const drawn = useRef<Movement>({ zoom: 1, x: 0, y: 0 })
  useLayoutEffect(() => {
    const element = drawing.current
    if (element === null) return
    const wanted = () => movementTo(sheet, { width, height }, look.now())
    const drawAnew = () => {
      drawn.current = wanted()
      draw(element, drawn.current)
      carry(element, drawn.current, drawn.current)
    }
    drawAnew()
    let shown = look.now()
    let [asked, rest] = [0, 0]
    const show = () => {
      asked = 0
      carry(element, drawn.current, wanted())
    }
    const forget = look.subscribe(() => {
      if (look.now() === shown) return
      shown = look.now()
      clearTimeout(rest)
      if (Math.abs(wanted().zoom / drawn.current.zoom - 1) > 1e-6) rest = window.setTimeout(drawAnew, REST_MS)
      if (asked === 0) asked = requestAnimationFrame(show)
    })
    return () => {
      cancelAnimationFrame(asked)
      clearTimeout(rest)
      forget()
    }
  }, [drawing, sheet, width, height, look])
  useLayoutEffect(() => {
    // What is drawn newly keeps its size like the rest of the picture, which may have been carried elsewhere since.
    if (drawing.current !== null && content !== null) draw(drawing.current, drawn.current)
  }, [drawing, content])
}
