/** One step of a gesture: zoom by a factor about a place of the element, then move by pixels. */
export interface GestureStep {
  readonly factor: number
  readonly at: { readonly x: number; readonly y: number }
  readonly by: { readonly x: number; readonly y: number }
}

/** A notch of an ordinary wheel is 100 to 120 units; it zooms by about a fifth. Trackpads send many small ones. */
const WHEEL_STEP = 0.0016
const PINCH_STEP = 0.01
const MOST_IN_A_STEP = 1.5
/** A pointer that moved less than this has pressed, not dragged. */
const DRAG_FROM_PX = 4

/**
 * Hears wheel, pinch and drag on an element and tells them as steps; a drag does not end in a click. Plain wheel zooms,
 * since nothing in the drawing scrolls; with Shift it moves sideways. Two fingers zoom about the place between them. Where
 * the drawing stands on a page that scrolls, `wheelIsMine` says whether a plain wheel is meant for it.
 */
export function hearGestures(
  element: HTMLElement,
  take: (step: GestureStep) => void,
  wheelIsMine: () => boolean = () => true,
): () => void {
  const hears = new AbortController()
  const { signal } = hears
  const fingers = new Map<number, { x: number; y: number }>()
  let dragged = 0
  const placeOf = (event: MouseEvent) => {
    const { left, top } = element.getBoundingClientRect()
    return { x: event.clientX - left, y: event.clientY - top }
  }
  const still = { x: 0, y: 0 }

  const wheel = (event: WheelEvent) => {
    if (!event.ctrlKey && !wheelIsMine()) return
    event.preventDefault()
    const at = placeOf(event)
    if (event.shiftKey && !event.ctrlKey) {
      take({ factor: 1, at, by: { x: -(event.deltaX || event.deltaY), y: 0 } })
      return
    }
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 33 : 1
    // A trackpad's pinch comes as a wheel with Ctrl held, in small units.
    const strength = event.ctrlKey && Math.abs(event.deltaY) < 50 ? PINCH_STEP : WHEEL_STEP
    const factor = Math.exp(-event.deltaY * lines * strength)
    take({ factor: Math.min(MOST_IN_A_STEP, Math.max(1 / MOST_IN_A_STEP, factor)), at, by: still })
  }
  const down = (event: PointerEvent) => {
    if (event.button !== 0) return
    if (fingers.size === 0) dragged = 0
    fingers.set(event.pointerId, placeOf(event))
  }
  const middleAndSpan = () => {
    const [one, other] = [...fingers.values()]
    if (one === undefined || other === undefined) return { middle: one ?? still, span: 0 }
    return {
      middle: { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 },
      span: Math.max(8, Math.hypot(one.x - other.x, one.y - other.y)),
    }
  }
  const moved = (event: PointerEvent) => {
    if (!fingers.has(event.pointerId)) return
    const before = middleAndSpan()
    fingers.set(event.pointerId, placeOf(event))
    const after = middleAndSpan()
    const by = { x: after.middle.x - before.middle.x, y: after.middle.y - before.middle.y }
    dragged += Math.hypot(by.x, by.y) + Math.abs(after.span - before.span)
    if (dragged < DRAG_FROM_PX) return
    element.setPointerCapture(event.pointerId)
    take({ factor: before.span === 0 ? 1 : after.span / before.span, at: before.middle, by })
  }
  const up = (event: PointerEvent) => fingers.delete(event.pointerId)
  const click = (event: MouseEvent) => {
    if (dragged >= DRAG_FROM_PX) event.stopPropagation()
    dragged = 0
  }
  element.addEventListener('wheel', wheel, { passive: false, signal })
  element.addEventListener('pointerdown', down, { signal })
  element.addEventListener('pointermove', moved, { signal })
  element.addEventListener('pointerup', up, { signal })
  element.addEventListener('pointercancel', up, { signal })
  element.addEventListener('click', click, { capture: true, signal })
  return () => hears.abort()
}
