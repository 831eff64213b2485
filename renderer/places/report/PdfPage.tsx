import { useEffect, useState } from 'react'
import { useOwnWidth } from '../../drawing/use-own-width.ts'
import type { OpenDocument } from './pdf-document.ts'

interface PdfPageProps {
  readonly document: OpenDocument
  /** From 1. */
  readonly number: number
}

/** One page, drawn when it comes near the window, and anew when it is given another width. */
export function PdfPage({ document, number }: PdfPageProps) {
  const [canvas, width] = useOwnWidth<HTMLCanvasElement>()
  const [near, setNear] = useState(false)
  const [busy, setBusy] = useState(false)
  useEffect(() => {
    const shown = canvas.current
    if (shown === null) return
    const watch = new IntersectionObserver((entries) => setNear(entries.some((entry) => entry.isIntersecting)), {
      rootMargin: '600px',
    })
    watch.observe(shown)
    return () => watch.disconnect()
  }, [canvas])
  useEffect(() => {
    const shown = canvas.current
    if (!near || width === 0 || shown === null) return
    setBusy(true)
    const stop = document.draw(number, shown, width, () => setBusy(false))
    return () => {
      setBusy(false)
      stop()
    }
  }, [canvas, near, width, document, number])
  return (
    <canvas
      ref={canvas}
      role="img"
      aria-label={`Page ${number} of ${document.pages}`}
      aria-busy={busy}
      className="pdf-page"
      style={{ aspectRatio: `1 / ${document.tallness}` }}
    />
  )
}
