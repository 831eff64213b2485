import { setImmediate as turn } from 'node:timers/promises'
import { withoutIsolates } from './bidirectional.ts'
import type { ObjectWriter } from './object-writer.ts'
import { type PDFRef, textString } from './pdf-objects.ts'

export type StructureType =
  | 'Document'
  | 'Sect'
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Caption'
  | 'Figure'
  | 'Link'
  | 'Note'
  | 'Span'

/** After as many elements the program looks up, so that what is compressed beside goes on. */
const WRITTEN_IN_ONE_GO = 400

type Kid =
  | StructureElement
  | { readonly page: number; readonly markedContent: number }
  | { readonly page: number; readonly annotation: PDFRef }

/** One element of the logical structure (ISO 32000-1, 14.7.2). Elements without content are left out when written. */
export class StructureElement {
  readonly kids: Kid[] = []

  private constructor(
    readonly type: StructureType,
    readonly more: { readonly alternative?: string; readonly scope?: 'Column' | 'Row' },
  ) {}

  static root(): StructureElement {
    return new StructureElement('Document', {})
  }

  /** Adds a child after what is there already. */
  add(type: StructureType, more: StructureElement['more'] = {}): StructureElement {
    const child = new StructureElement(type, more)
    this.kids.push(child)
    return child
  }

  /** Finds every element at or below this one that holds content; answers whether this one does. */
  findContent(found: Set<StructureElement>): boolean {
    for (const kid of this.kids) if (!(kid instanceof StructureElement) || kid.findContent(found)) found.add(this)
    return found.has(this)
  }
}

/** What a page's marked content and its annotations belong to, gathered while pages are drawn. */
export interface PageTags {
  readonly owners: readonly StructureElement[]
  readonly annotations: readonly { readonly ref: PDFRef; readonly owner: StructureElement; readonly key: number }[]
}

/**
 * Writes the tree and its parent tree; answers the root's reference. `nextKey` is the first key no page or link uses.
 * The many elements are put down as text at once, without an object for each of their parts.
 */
export async function writeStructure(
  writer: ObjectWriter,
  root: StructureElement,
  pages: readonly { readonly ref: PDFRef; readonly tags: PageTags }[],
  nextKey: number,
): Promise<PDFRef> {
  const { context } = writer
  const rootRef = context.nextRef()
  const refs = new Map<StructureElement, PDFRef>()
  const parents = new Map<StructureElement, PDFRef>()
  const withContent = new Set<StructureElement>()
  root.findContent(withContent)
  const name = (element: StructureElement, parent: PDFRef) => {
    const ref = context.nextRef()
    refs.set(element, ref)
    parents.set(element, parent)
    for (const kid of element.kids) if (kid instanceof StructureElement && withContent.has(kid)) name(kid, ref)
  }
  name(root, rootRef)
  let written = 0
  for (const [element, ref] of refs) {
    writer.write(ref, elementObject(element))
    written += 1
    if (written % WRITTEN_IN_ONE_GO === 0) await turn()
  }

  function elementObject(element: StructureElement): string {
    const kids: string[] = []
    for (const kid of element.kids) {
      if (kid instanceof StructureElement) {
        const own = refs.get(kid)
        if (own !== undefined) kids.push(own.tag)
        continue
      }
      const page = pages[kid.page]?.ref
      if (page === undefined) continue
      if ('markedContent' in kid) kids.push(`<</Type/MCR/Pg ${page.tag}/MCID ${kid.markedContent}>>`)
      else kids.push(`<</Type/OBJR/Pg ${page.tag}/Obj ${kid.annotation.tag}>>`)
    }
    const { alternative, scope } = element.more
    const more = [
      alternative === undefined ? '' : `/Alt ${textString(withoutIsolates(alternative))}`,
      scope === undefined ? '' : `/A<</O/Table/Scope/${scope}>>`,
    ].join('')
    const parent = parents.get(element) ?? rootRef
    return `<</Type/StructElem/S/${element.type}/P ${parent.tag}/K[${kids.join(' ')}]${more}>>`
  }

  const top = refs.get(root)
  const kidsOfRoot = top === undefined ? [] : [top]
  const parentTree = context.nextRef()
  const numbers: string[] = []
  pages.forEach(({ tags }, index) => {
    numbers.push(`${index}[${tags.owners.map((owner) => (refs.get(owner) ?? rootRef).tag).join(' ')}]`)
  })
  const annotations = pages.flatMap(({ tags }) => tags.annotations).sort((a, b) => a.key - b.key)
  for (const { key, owner } of annotations) numbers.push(`${key} ${(refs.get(owner) ?? rootRef).tag}`)
  writer.write(parentTree, `<</Nums[${numbers.join(' ')}]>>`)
  writer.write(
    rootRef,
    context.obj({
      Type: 'StructTreeRoot',
      K: kidsOfRoot,
      ParentTree: parentTree,
      ParentTreeNextKey: nextKey,
    }),
  )
  return rootRef
}
