import { type RefObject, useLayoutEffect, useRef } from 'react'
import { TOUCH_TARGET_PX, typeScale } from '../../shared-types/tokens.ts'
import { ticksPath } from './KeepsSize.tsx'
import { type LookSource, movementTo, type Room, type SheetSize } from './plan-scale.ts'

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
function put<One extends Element>(elements: Iterable<One>, name: string, textFor: (one: One) => string): void {
  for (const one of elements) {
    const text = textFor(one)
    if (one.getAttribute(name) !== text) one.setAttribute(name, text)
  }
}

/** Draws a layer in its right weights for a movement; what keeps its size is only moved. */
function draw(layer: Element, { zoom, x, y }: Movement): void {
  const matrix = `matrix(${zoom} 0 0 ${zoom} ${x.toFixed(2)} ${y.toFixed(2)})`
  put(layer.querySelectorAll('.moves'), 'transform', () => matrix)
  put(layer.querySelectorAll<SVGElement>('.keeps-size'), 'transform', ({ dataset }) => {
    return `translate(${(zoom * Number(dataset.x) + x).toFixed(2)} ${(zoom * Number(dataset.y) + y).toFixed(2)})`
  })
  put(layer.querySelectorAll<SVGElement>('.keeps-ticks'), 'd', ({ dataset }) =>
    ticksPath(dataset.ticks ?? '', zoom, x, y),
  )
  put(layer.querySelectorAll<SVGElement>('pattern'), 'patternTransform', ({ dataset }) => {
    return `scale(${1 / (Number(dataset.unit) * zoom)}) rotate(${dataset.turn})`
  })
}

/** Targets whose halo is set in one frame: each is styled anew. */
const HALOS = 16

/**
 * Fits the halos of targets to a zoom, so many at once; true when there were more. One that shows as wide as a finger
 * has none, however much wider it is.
 */
function fitHalos(drawing: Element, zoom: number, most: number): boolean {
  let left = most
  for (const target of drawing.querySelectorAll<SVGElement>('.plan-target')) {
    const narrow = `${Math.min(TOUCH_TARGET_PX, Number(target.dataset.narrow) * zoom).toFixed(1)}px`
    if (target.style.getPropertyValue('--narrow') === narrow) continue
    if (left === 0) return true
    target.style.setProperty('--narrow', narrow)
    left -= 1
  }
  return false
}

const carried = new WeakMap<Element, string>()

/** Sets where a picture is carried to; written only where it differs. */
function carryTo(element: HTMLElement | SVGElement, transform: string): void {
  if ((carried.get(element) ?? '') === transform) return
  carried.set(element, transform)
  element.style.transform = transform
}

/** Takes the picture that was drawn for one movement to where another wants it; whole pixels where it keeps its size. */
function carriage(drawn: Movement, wanted: Movement): string {
  const by = isSameZoom(wanted, drawn) ? 1 : wanted.zoom / drawn.zoom
  const whole = (px: number) => (by === 1 ? Math.round(px) : px).toFixed(2)
  const [x, y] = [whole(wanted.x - drawn.x * by), whole(wanted.y - drawn.y * by)]
  return by === 1 && Number(x) === 0 && Number(y) === 0 ? '' : `matrix(${by}, 0, 0, ${by}, ${x}, ${y})`
}

/** Carries the whole drawing at once where all its layers were drawn for one movement, else each layer by itself. */
function carryAll(drawing: HTMLElement | null, layers: readonly DrawnLayer[], wanted: Movement): void {
  const first = layers[0]?.stands ?? whole
  const isOne = layers.every(({ stands }) => stands === first)
  if (drawing !== null) carryTo(drawing, isOne ? carriage(first, wanted) : '')
  for (const { layer, stands } of layers) carryTo(layer, isOne ? '' : carriage(stands, wanted))
}

const isSameZoom = (a: Movement, b: Movement): boolean => Math.abs(a.zoom / b.zoom - 1) <= 1e-6

const whole: Movement = { zoom: 1, x: 0, y: 0 }

/** A layer of a drawing, and the movement it was drawn for. */
interface DrawnLayer {
  readonly layer: SVGElement
  readonly stands: Movement
}

/** Turn of a layer: in the frame of the first, each begins to be carried by itself; what is only reached comes last. */
const turnOf = ({ classList }: Element): number =>
  classList.contains('plan-lit') ? 0 : classList.contains('plan-reached') ? 2 : 1

/** The layers of a drawing in the order they are drawn anew. */
function layersOf(drawing: HTMLElement | null, drawn: WeakMap<Element, Movement>): readonly DrawnLayer[] {
  const layers = [...(drawing?.children ?? [])] as SVGElement[]
  return layers.sort((a, b) => turnOf(a) - turnOf(b)).map((layer) => ({ layer, stands: drawn.get(layer) ?? whole }))
}

/**
 * Shows a drawing as its look says and follows it without rendering anything anew: the finished picture is carried along
 * at once, and drawn again in its right weights the moment a zoom rests, one layer in each frame, the others being
 * carried until it is their turn; a picture that was only moved is right as it is. `placed` changes with what keeps its
 * size, `atHand` with what does in the layer of the panel in hand alone.
 */
export function useMovement(
  drawing: RefObject<HTMLElement | null>,
  sheet: SheetSize,
  { width, height }: Room,
  look: LookSource,
  placed: unknown,
  atHand: unknown,
): void {
  const drawn = useRef(new WeakMap<Element, Movement>())
  useLayoutEffect(() => {
    const wanted = () => movementTo(sheet, { width, height }, look.now())
    const drawAnew = (layer: SVGElement, movement: Movement) => {
      drawn.current.set(layer, movement)
      draw(layer, movement)
    }
    const layers = () => layersOf(drawing.current, drawn.current)
    const first = wanted()
    for (const { layer } of layers()) drawAnew(layer, first)
    carryAll(drawing.current, layers(), first)
    if (drawing.current !== null) fitHalos(drawing.current, first.zoom, Number.POSITIVE_INFINITY)
    let shown = look.now()
    let [asked, rest, slice] = [0, 0, 0]
    const show = () => {
      asked = 0
      carryAll(drawing.current, layers(), wanted())
    }
    const drawNext = () => {
      slice = 0
      const [all, to] = [layers(), wanted()]
      const isReady = ({ stands }: DrawnLayer) => isSameZoom(stands, to)
      const next = all.find((one) => !isReady(one))
      if (next !== undefined) {
        // For the very movement its neighbours were drawn for, so that all are carried by the same whole pixels.
        drawAnew(next.layer, all.find(isReady)?.stands ?? to)
        carryAll(drawing.current, layers(), to)
      } else if (drawing.current === null || !fitHalos(drawing.current, to.zoom, HALOS)) return
      slice = requestAnimationFrame(drawNext)
    }
    const forget = look.subscribe(() => {
      if (look.now() === shown) return
      shown = look.now()
      clearTimeout(rest)
      cancelAnimationFrame(slice)
      rest = window.setTimeout(() => {
        slice = requestAnimationFrame(drawNext)
      }, REST_MS)
      if (asked === 0) asked = requestAnimationFrame(show)
    })
    return () => {
      cancelAnimationFrame(asked)
      cancelAnimationFrame(slice)
      clearTimeout(rest)
      forget()
    }
  }, [drawing, sheet, width, height, look])
  useLayoutEffect(() => {
    // What is drawn newly stands where the rest of its picture was drawn, which may have been carried elsewhere since.
    if (placed !== null) for (const { layer, stands } of layersOf(drawing.current, drawn.current)) draw(layer, stands)
  }, [drawing, placed])
  useLayoutEffect(() => {
    if (atHand === null) return
    for (const { layer, stands } of layersOf(drawing.current, drawn.current)) {
      if (layer.classList.contains('plan-at-hand')) draw(layer, stands)
    }
  }, [drawing, atHand])
}
