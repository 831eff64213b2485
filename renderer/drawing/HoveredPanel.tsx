import { type RefObject, useEffect, useState } from 'react'
import { decoration } from './decoration.ts'

const panelAt = (target: EventTarget | null): string | null =>
  target instanceof Element ? (target.closest('[data-panel]')?.getAttribute('data-panel') ?? null) : null

/** Panel under the pointer, followed without the drawing being rendered anew. */
export function useHovered(drawing: RefObject<Element | null>): string | null {
  const [hovered, setHovered] = useState<string | null>(null)
  useEffect(() => {
    const element = drawing.current
    if (element === null) return
    const hears = new AbortController()
    const { signal } = hears
    element.addEventListener('pointerover', (event) => setHovered(panelAt(event.target)), { signal })
    element.addEventListener('pointerleave', () => setHovered(null), { signal })
    return () => hears.abort()
  }, [drawing])
  return hovered
}

interface HoveredNameProps {
  readonly drawing: RefObject<Element | null>
  readonly nameOf: (panelId: string) => string
}

/** The line at the foot of the drawing that names the panel under the pointer. */
export function HoveredName({ drawing, nameOf }: HoveredNameProps) {
  const hovered = useHovered(drawing)
  return hovered === null ? null : (
    <p className="plan-hovered" {...decoration}>
      {nameOf(hovered)}
    </p>
  )
}
