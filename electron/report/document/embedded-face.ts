import { fontSubset } from './font-subset.ts'
import type { ObjectWriter } from './object-writer.ts'
import { type PDFRef, PDFString, textString } from './pdf-objects.ts'
import type { ShapedGlyph, ShapedText, Typeface } from './typeface.ts'

interface Character {
  readonly id: number
  readonly glyphId: number
  readonly text: string
  readonly advance: number
}

/**
 * One face inside one document. A character id is given to each pair of glyph and text, in order of first use, so that
 * copied text is exactly what was written even where a face draws two characters alike (space and no-break space).
 */
export class EmbeddedFace {
  readonly ref: PDFRef
  readonly #characters: Character[] = []
  /** Character ids as they are shown, by glyph and text. */
  readonly #codes = new Map<number, Map<string, string>>()
  readonly #operands = new Map<ShapedText, string>()

  constructor(
    readonly typeface: Typeface,
    readonly resourceName: string,
    private readonly writer: ObjectWriter,
  ) {
    this.ref = writer.context.nextRef()
  }

  get used(): boolean {
    return this.#characters.length > 0
  }

  /** Operators that show the text: TJ arrays, with Ts where a mark is raised. The type size is already set. */
  show(shaped: ShapedText, sizePt: number): string {
    const plain = this.#operands.get(shaped)
    if (plain !== undefined) return plain
    const raised = shaped.glyphs.some((glyph) => glyph.shiftY !== 0)
    const operators = raised ? this.#showRaised(shaped, sizePt) : `[${this.#array(shaped.glyphs)}] TJ`
    if (!raised) this.#operands.set(shaped, operators)
    return operators
  }

  #showRaised(shaped: ShapedText, sizePt: number): string {
    return shaped.glyphs
      .map((glyph) => `${((glyph.shiftY * sizePt) / 1000).toFixed(3)} Ts [${this.#array([glyph])}] TJ`)
      .concat('0 Ts')
      .join(' ')
  }

  #array(glyphs: ShapedText['glyphs']): string {
    let text = ''
    let open = false
    const move = (by: number) => {
      if (Math.abs(by) < 0.01) return
      text += `${open ? '>' : ''}${Math.round(-by * 100) / 100}`
      open = false
    }
    for (const glyph of glyphs) {
      move(glyph.shiftX)
      if (!open) text += '<'
      open = true
      text += this.#code(glyph)
      move(glyph.advance - glyph.ownAdvance - glyph.shiftX)
    }
    return open ? `${text}>` : text
  }

  #code({ glyphId, text, ownAdvance }: ShapedGlyph): string {
    const known = this.#codes.get(glyphId)?.get(text)
    if (known !== undefined) return known
    const id = this.#characters.length + 1
    const code = id.toString(16).padStart(4, '0')
    const ofGlyph = this.#codes.get(glyphId) ?? new Map<string, string>()
    this.#codes.set(glyphId, ofGlyph.set(text, code))
    this.#characters.push({ id, glyphId, text, advance: ownAdvance })
    return code
  }

  /** Writes the subset and its tables (ISO 32000-1, 9.7). The subset's tag is fixed by the face's resource name. */
  embed(): void {
    const { writer, typeface } = this
    const { context } = writer
    const { font } = typeface
    const { measures } = font
    const glyphMap = Buffer.alloc((this.#characters.length + 1) * 2)
    for (const { id, glyphId } of this.#characters) glyphMap.writeUInt16BE(glyphId, id * 2)
    const refs = Array.from({ length: 5 }, () => context.nextRef())
    const [file, descriptor, descendant, toUnicode, map] = refs as [PDFRef, PDFRef, PDFRef, PDFRef, PDFRef]
    const letter = this.resourceName.replace(/\D/g, '').padStart(2, '0')
    const tag = [...letter].map((digit) => String.fromCharCode(65 + Number(digit))).join('')
    const name = `WMARK${tag.slice(-1)}+${font.postscriptName}`
    const program = fontSubset(
      font,
      this.#characters.map(({ glyphId }) => glyphId),
    )
    writer.writeCompressed(file, context.obj({ Length1: program.length }), program)
    writer.writeCompressed(map, context.obj({}), glyphMap)
    writer.writeCompressed(toUnicode, context.obj({}), Buffer.from(this.#unicodeMap(), 'latin1'))
    writer.write(
      descriptor,
      context.obj({
        Type: 'FontDescriptor',
        FontName: name,
        Flags: 4,
        FontBBox: measures.boundingBox.map((units) => typeface.scaled(units)),
        ItalicAngle: measures.italicAngle,
        Ascent: typeface.scaled(measures.ascent),
        Descent: typeface.scaled(measures.descent),
        CapHeight: typeface.scaled(measures.capHeight),
        XHeight: typeface.scaled(measures.xHeight),
        StemV: 80,
        FontFile2: file,
      }),
    )
    writer.write(
      descendant,
      context.obj({
        Type: 'Font',
        Subtype: 'CIDFontType2',
        BaseFont: name,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        FontDescriptor: descriptor,
        CIDToGIDMap: map,
        DW: 0,
        W: [1, this.#characters.map(({ advance }) => advance)],
      }),
    )
    writer.write(
      this.ref,
      context.obj({
        Type: 'Font',
        Subtype: 'Type0',
        BaseFont: name,
        Encoding: 'Identity-H',
        DescendantFonts: [descendant],
        ToUnicode: toUnicode,
      }),
    )
  }

  #unicodeMap(): string {
    const rows = this.#characters
      .filter(({ text }) => text !== '')
      .map(({ id, text }) => {
        const target = textString(text).slice(5, -1)
        return `<${id.toString(16).padStart(4, '0')}> <${target}>`
      })
    const blocks: string[] = []
    for (let at = 0; at < rows.length; at += 100) {
      const block = rows.slice(at, at + 100)
      blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`)
    }
    return [
      '/CIDInit /ProcSet findresource begin 12 dict begin begincmap',
      '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
      '/CMapName /Adobe-Identity-UCS def /CMapType 2 def',
      '1 begincodespacerange <0000> <ffff> endcodespacerange',
      ...blocks,
      'endcmap CMapName currentdict /CMap defineresource pop end end',
    ].join('\n')
  }
}
