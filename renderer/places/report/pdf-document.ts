import { GlobalWorkerOptions, getDocument, type PDFDocumentProxy } from 'pdfjs-dist'
import workerAddress from 'pdfjs-dist/build/pdf.worker.min.mjs?url'

/** An opened report: how many pages, how tall each is against its width, and a page drawn into a canvas. */
export interface OpenDocument {
  readonly pages: number
  /** Height over width of the first page; the report has one paper size throughout. */
  readonly tallness: number
  /** Draws page `number` (from 1) at a width in screen pixels; the answer stops a drawing that is no longer wanted. */
  draw(number: number, canvas: HTMLCanvasElement, widthPx: number, drawn: () => void): () => void
  close(): void
}

function drawPage(
  document: PDFDocumentProxy,
  number: number,
  canvas: HTMLCanvasElement,
  widthPx: number,
  drawn: () => void,
): () => void {
  let stop: () => void = () => undefined
  let wanted = true
  void (async () => {
    const page = await document.getPage(number)
    if (!wanted) return
    const scale = widthPx / page.getViewport({ scale: 1 }).width
    const viewport = page.getViewport({ scale: scale * (window.devicePixelRatio || 1) })
    canvas.width = Math.round(viewport.width)
    canvas.height = Math.round(viewport.height)
    const drawing = page.render({ canvas, viewport })
    stop = () => drawing.cancel()
    await drawing.promise
    drawn()
  })().catch((thrown: unknown) => {
    // What is stopped ends with a fault of its own, and so does a page of a document that was closed meanwhile.
    if (wanted) throw thrown
  })
  return () => {
    wanted = false
    stop()
  }
}

/** Opens a PDF by its address. Rejects when it cannot be fetched or read. */
export async function openDocument(address: string): Promise<OpenDocument> {
  GlobalWorkerOptions.workerSrc = workerAddress
  const task = getDocument({ url: address, disableAutoFetch: true })
  const document = await task.promise
  const first = (await document.getPage(1)).getViewport({ scale: 1 })
  return {
    pages: document.numPages,
    tallness: first.height / first.width,
    draw: (...asked) => drawPage(document, ...asked),
    close: () => void task.destroy(),
  }
}
