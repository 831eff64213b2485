import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** A piece of text of a page, with the kind of element it belongs to; in the order in which the report is read. */
export interface Told {
  readonly role: string
  /** Which element of the page it belongs to. */
  readonly element: number
  readonly text: string
  /** Left end of the baseline, in points from the lower left corner of the page. */
  readonly x: number
  readonly y: number
  /** Size of the type in points. */
  readonly size: number
}

interface Node {
  readonly role?: string
  readonly id?: string
  readonly type?: string
  readonly children?: readonly Node[]
}

/** Every page as pdf.js reads it, by its structure tree. */
export async function toldPages(bytes: Buffer): Promise<Told[][]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise
  const pages: Told[][] = []
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number)
    const texts = new Map<string, Omit<Told, 'role' | 'element'>[]>()
    let current = ''
    for (const item of (await page.getTextContent({ includeMarkedContent: true })).items) {
      if ('str' in item) {
        if (item.str.trim() === '') continue
        const [, , c, d, x, y] = item.transform
        const own = { text: item.str, x, y, size: Math.hypot(c, d) }
        texts.set(current, [...(texts.get(current) ?? []), own])
      } else current = item.type === 'endMarkedContent' ? '' : (item.id ?? '')
    }
    const told: Told[] = []
    let elements = 0
    const visit = (node: Node, role: string, element: number): void => {
      if (node.type === 'content')
        for (const own of texts.get(node.id ?? '') ?? []) told.push({ role, element, ...own })
      const within = node.role === undefined || node.role === 'Link'
      const own = within ? element : ++elements
      for (const kid of node.children ?? []) visit(kid, within ? role : (node.role ?? role), own)
    }
    visit((await page.getStructTree()) as Node, '', 0)
    pages.push(told)
  }
  await document.destroy()
  return pages
}
