import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react'
import type { CutLine } from '../../shared-types/coating-cut.ts'
import type { PlanPoint } from '../../shared-types/finding.ts'
import type { CutEnd } from './CutEnds.tsx'

interface MapHears {
  readonly line: CutLine | null
  /** View point under a pointer. */
  readonly pointOf: (event: { readonly clientX: number; readonly clientY: number }) => PlanPoint
  readonly onMove: (end: CutEnd, to: PlanPoint) => void
  readonly onPick: ((at: PlanPoint) => void) | null
  /** A spot was pointed at, or came into focus and should be in sight, by its letter. */
  readonly onReach: (letter: string, inFocus: boolean) => void
}

const STEP_MM = 10
const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

const endAt = (target: EventTarget | null): CutEnd | null => {
  const end = target instanceof Element ? target.closest('[data-cut-end]')?.getAttribute('data-cut-end') : null
  return end === 'from' || end === 'to' ? end : null
}
const spotAt = (target: EventTarget | null): string | null =>
  target instanceof Element ? (target.closest('[data-spot]')?.getAttribute('data-spot') ?? null) : null

/**
 * Hears what is done to the marks of a map: spots reached; ends of the cut dragged, or moved by arrow keys 10 mm at a time,
 * with Shift 1 mm; presses that pick an end. Everything else is left to the drawing they stand on.
 */
export function useMapHearing(drawing: RefObject<HTMLElement | null>, hears: MapHears): void {
  const latest = useRef(hears)
  useLayoutEffect(() => {
    latest.current = hears
  })
  useEffect(() => {
    const element = drawing.current
    if (element === null) return
    const end = new AbortController()
    const { signal } = end
    let dragged: CutEnd | null = null
    const reach = (event: Event) => {
      const letter = spotAt(event.target)
      if (letter !== null) latest.current.onReach(letter, event.type === 'focusin')
    }
    const down = (event: PointerEvent) => {
      dragged = endAt(event.target)
      if (dragged === null || !(event.target instanceof Element)) return
      // The drawing under it would be moved along.
      event.stopPropagation()
      event.target.setPointerCapture(event.pointerId)
    }
    const move = (event: PointerEvent) => {
      if (dragged !== null) latest.current.onMove(dragged, latest.current.pointOf(event))
    }
    const drop = () => {
      dragged = null
    }
    const press = (event: KeyboardEvent) => {
      const [own, by] = [endAt(event.target), moves[event.key]]
      const { line, onMove } = latest.current
      if (own === null || by === undefined || line === null || event.ctrlKey || event.altKey) return
      const step = event.shiftKey ? 1 : STEP_MM
      onMove(own, { u: line[own].u + by[0] * step, v: line[own].v + by[1] * step })
      event.preventDefault()
      event.stopPropagation()
    }
    const click = (event: MouseEvent) => latest.current.onPick?.(latest.current.pointOf(event))
    element.addEventListener('pointerover', reach, { signal })
    element.addEventListener('focusin', reach, { signal })
    element.addEventListener('pointerdown', down, { signal })
    element.addEventListener('pointermove', move, { signal })
    element.addEventListener('pointerup', drop, { signal })
    element.addEventListener('pointercancel', drop, { signal })
    element.addEventListener('keydown', press, { signal })
    element.addEventListener('click', click, { signal })
    return () => end.abort()
  }, [drawing])
}
