import { setImmediate as turn } from 'node:timers/promises'
import { EmbeddedFace } from './embedded-face.ts'
import { type DocumentFacts, writeMetadata } from './metadata.ts'
import type { ObjectWriter } from './object-writer.ts'
import { type Bookmark, writeOutline } from './outline.ts'
import { PageCanvas, POINTS_PER_MM } from './page-canvas.ts'
import { type PDFRef, PDFString, textString } from './pdf-objects.ts'
import { StructureElement, writeStructure } from './structure-tree.ts'
import { type ShippedFace, shippedFaces, typeface } from './typeface.ts'

/** A named place of the report: page index and height from the top, mm. */
export interface Anchor {
  readonly page: number
  readonly topMm: number
}

/**
 * All pages of one report, drawn into memory as text only, then written. Pictures are written beforehand. A document
 * that is only measured knows its pages and places and cannot be written.
 */
export class ReportDocument {
  readonly pages: PageCanvas[] = []
  readonly root = StructureElement.root()
  readonly anchors = new Map<string, Anchor>()
  readonly bookmarks: Bookmark[] = []
  readonly #faces = new Map<ShippedFace, EmbeddedFace>()

  constructor(
    readonly writer: ObjectWriter,
    readonly widthMm: number,
    readonly heightMm: number,
    readonly onlyMeasured = false,
  ) {}

  face(name: ShippedFace): EmbeddedFace {
    const known = this.#faces.get(name)
    if (known !== undefined) return known
    const number = Object.keys(shippedFaces).indexOf(name) + 1
    const face = new EmbeddedFace(typeface(name), `F${number}`, this.writer)
    this.#faces.set(name, face)
    return face
  }

  addPage(): PageCanvas {
    const nextRef = () => this.writer.context.nextRef()
    const page = new PageCanvas(this.pages.length, this.widthMm, this.heightMm, nextRef, this.onlyMeasured)
    this.pages.push(page)
    return page
  }

  /** Names a place; the first use of a name holds. */
  anchor(name: string, page: PageCanvas, topMm: number): void {
    if (!this.anchors.has(name)) this.anchors.set(name, { page: page.index, topMm })
  }

  /** Hands everything to the writer; answers the two objects its file ends with. */
  async write(facts: DocumentFacts): Promise<{ readonly catalog: PDFRef; readonly information: PDFRef }> {
    const { writer } = this
    const { context } = writer
    const tree = context.nextRef()
    const refs = this.pages.map(() => context.nextRef())
    let key = this.pages.length
    const keys = new Map<PDFRef, number>()
    for (const page of this.pages) for (const link of page.links) keys.set(link.ref, key++)
    for (const [index, page] of this.pages.entries()) {
      this.#writePage(page, refs[index] as PDFRef, tree, refs, keys)
      // Contents are compressed beside; the next is begun when this program looks up from its work.
      await turn()
    }
    writer.write(tree, context.obj({ Type: 'Pages', Kids: refs, Count: refs.length }))
    for (const face of this.#faces.values()) if (face.used) face.embed()
    const structure = await writeStructure(
      writer,
      this.root,
      this.pages.map((page, index) => ({
        ref: refs[index] as PDFRef,
        tags: page.tags((link) => keys.get(link.ref) ?? 0),
      })),
      key,
    )
    const outline = writeOutline(writer, this.bookmarks, (target) => this.#destination(target, refs))
    const { xmp, information, intent } = writeMetadata(writer, facts)
    const catalog = context.nextRef()
    writer.write(
      catalog,
      context.obj({
        Type: 'Catalog',
        Pages: tree,
        Lang: PDFString.of(facts.language),
        MarkInfo: { Marked: true },
        StructTreeRoot: structure,
        Outlines: outline,
        PageMode: 'UseOutlines',
        PageLabels: { Nums: [0, { S: 'D', St: 1 }] },
        ViewerPreferences: { DisplayDocTitle: true },
        Metadata: xmp,
        OutputIntents: [intent],
      }),
    )
    return { catalog, information }
  }

  /** Where a link or bookmark leads, as it stands in the file; null when there is no such place. */
  #destination(target: string, refs: readonly PDFRef[]): string | null {
    const anchor = this.anchors.get(target)
    const ref = anchor === undefined ? undefined : refs[anchor.page]
    if (anchor === undefined || ref === undefined) return null
    const top = Math.round((this.heightMm - anchor.topMm) * POINTS_PER_MM)
    return `[${ref.tag}/XYZ 0 ${top} 0]`
  }

  #writePage(
    page: PageCanvas,
    ref: PDFRef,
    parent: PDFRef,
    refs: readonly PDFRef[],
    keys: ReadonlyMap<PDFRef, number>,
  ): void {
    const { writer } = this
    const { context } = writer
    const content = context.nextRef()
    const annotations: string[] = []
    for (const link of page.links) {
      const destination = this.#destination(link.target, refs)
      if (destination === null) throw new Error(`A link of the report leads to no place: ${link.target}`)
      annotations.push(link.ref.tag)
      const { left, top, width, height } = link.box
      const box = [left, this.heightMm - top - height, left + width, this.heightMm - top]
      const points = box.map((mm) => Math.round(mm * POINTS_PER_MM * 100) / 100)
      // As text at once, without an object for each of its parts: there are thousands.
      writer.write(
        link.ref,
        `<</Type/Annot/Subtype/Link/F 4/Border[0 0 0]/Rect[${points.join(' ')}]/Dest${destination}` +
          `/Contents${textString(link.words)}/StructParent ${keys.get(link.ref) ?? 0}>>`,
      )
    }
    writer.writeCompressed(content, context.obj({}), Buffer.from(page.content(), 'latin1'))
    const fonts = [...page.facesUsed].map((face) => `/${face.resourceName} ${face.ref.tag}`).join('')
    const objects = [...page.objectsUsed].map(([name, object]) => `/${name} ${object.tag}`).join('')
    const size = [this.widthMm, this.heightMm].map((mm) => round(mm * POINTS_PER_MM)).join(' ')
    writer.write(
      ref,
      `<</Type/Page/Parent ${parent.tag}/MediaBox[0 0 ${size}]/Resources<</Font<<${fonts}>>/XObject<<${objects}>>>>` +
        `/Contents ${content.tag}/StructParents ${page.index}/Tabs/S/Annots[${annotations.join(' ')}]>>`,
    )
  }
}

const round = (points: number): number => Math.round(points * 1000) / 1000
