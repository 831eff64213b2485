import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Width of an element as it stands on the page, px; 0 until it is laid out. Follows the window. */
export function useOwnWidth<Element extends HTMLElement>(): [RefObject<Element | null>, number] {
  const element = useRef<Element>(null)
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const at = element.current
    if (at === null) return
    const observer = new ResizeObserver(() => setWidth(Math.floor(at.clientWidth)))
    observer.observe(at)
    setWidth(Math.floor(at.clientWidth))
    return () => observer.disconnect()
  }, [])
  return [element, width]
}
