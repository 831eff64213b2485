import type { EmbeddedFace } from './embedded-face.ts'
import type { PDFRef } from './pdf-objects.ts'
import type { PageTags, StructureElement } from './structure-tree.ts'
import type { ShapedText } from './typeface.ts'

/** Points in a millimetre, exact: 72 points in an inch of 25.4 mm. */
export const POINTS_PER_MM = 72 / 25.4

/** Where a link leads: a named place of the report. */
export interface PageLink {
  readonly ref: PDFRef
  readonly box: { readonly left: number; readonly top: number; readonly width: number; readonly height: number }
  readonly target: string
  readonly words: string
  readonly owner: StructureElement
}

export interface StrokeStyle {
  readonly weightMm: number
  readonly colour: string
  readonly dashMm?: readonly number[] | undefined
  readonly round?: boolean | undefined
}

/** To a thousandth; PDF knows no exponents, and none arise at this size. */
const number = (value: number): string => String(Math.round(value * 1000) / 1000 + 0)

const knownColours = new Map<string, string>()

/** Red, green and blue of `#RRGGBB` as PDF operands. */
export function colourOperands(colour: string): string {
  let operands = knownColours.get(colour)
  if (operands === undefined) {
    operands = [1, 3, 5].map((at) => number(Number.parseInt(colour.slice(at, at + 2), 16) / 255)).join(' ')
    knownColours.set(colour, operands)
  }
  return operands
}

/**
 * One page being drawn. All lengths are millimetres from the page's left upper corner. Whatever is drawn belongs to a
 * structure element or is an artifact (running matter), never neither. A page that is only measured keeps nothing.
 */
export class PageCanvas {
  readonly #operators: string[] = []
  readonly #owners: StructureElement[] = []
  readonly links: PageLink[] = []
  readonly facesUsed = new Set<EmbeddedFace>()
  readonly objectsUsed = new Map<string, PDFRef>()
  #current: StructureElement | 'artifact' | null = null
  #fill = ''
  #stroke = ''
  #open = false

  constructor(
    readonly index: number,
    readonly widthMm: number,
    readonly heightMm: number,
    readonly nextRef: () => PDFRef,
    readonly onlyMeasured: boolean,
  ) {}

  /** Whatever is drawn next belongs to this element, or is an artifact. */
  belongTo(owner: StructureElement | 'artifact'): void {
    if (this.#current === owner) return
    this.#close()
    this.#current = owner
  }

  #close(): void {
    if (this.#open) this.#operators.push('EMC')
    this.#open = false
  }

  #emit(operators: string): void {
    if (this.onlyMeasured) return
    if (!this.#open) {
      const owner = this.#current ?? 'artifact'
      if (owner === 'artifact') {
        this.#operators.push('/Artifact BMC')
      } else {
        const markedContent = this.#owners.length
        this.#owners.push(owner)
        owner.kids.push({ page: this.index, markedContent })
        this.#operators.push(`/${owner.type} <</MCID ${markedContent}>> BDC`)
      }
      this.#open = true
    }
    this.#operators.push(operators)
  }

  /** Horizontal and vertical place in points, PDF's own axes. */
  #at(x: number, y: number): string {
    return `${number(x * POINTS_PER_MM)} ${number((this.heightMm - y) * POINTS_PER_MM)}`
  }

  /** Stretches of text that follow one another in one face, from `x` on. */
  text(
    face: EmbeddedFace,
    stretches: readonly ShapedText[],
    x: number,
    baseline: number,
    sizePt: number,
    colour: string,
  ): void {
    if (this.onlyMeasured) return
    this.facesUsed.add(face)
    const paint = this.#fill === colour ? '' : `${colourOperands(colour)} rg `
    this.#fill = colour
    const shown = stretches.map((shaped) => face.show(shaped, sizePt)).join(' ')
    this.#emit(`${paint}BT /${face.resourceName} ${number(sizePt)} Tf ${this.#at(x, baseline)} Td ${shown} ET`)
  }

  line(x1: number, y1: number, x2: number, y2: number, style: StrokeStyle): void {
    if (this.onlyMeasured) return
    this.#emit(`${this.#style(style)}${this.#at(x1, y1)} m ${this.#at(x2, y2)} l S`)
  }

  /** A path through `at`, already in operators of the page's own points. */
  rawPath(path: string, paint: 'S' | 'f' | 'B' | 'W n', style: StrokeStyle, fill?: string): void {
    const filling = fill === undefined || this.#fill === fill ? '' : `${colourOperands(fill)} rg `
    if (fill !== undefined) this.#fill = fill
    this.#emit(`${filling}${this.#style(style)}${path} ${paint}`)
  }

  rectangle(x: number, y: number, width: number, height: number, style: StrokeStyle | null, fill?: string): void {
    if (this.onlyMeasured) return
    const path = `${this.#at(x, y + height)} ${number(width * POINTS_PER_MM)} ${number(height * POINTS_PER_MM)} re`
    const plain = style ?? { weightMm: 0.1, colour: fill ?? '#000000' }
    this.rawPath(path, style === null ? 'f' : fill === undefined ? 'S' : 'B', plain, fill)
  }

  circle(x: number, y: number, radius: number, style: StrokeStyle | null, fill?: string): void {
    if (this.onlyMeasured) return
    // Four cubic arcs; 0.5523 is the usual factor 4/3·tan(π/8), off a true circle by 0.03 %.
    const c = radius * 0.5523
    const path = [
      `${this.#at(x + radius, y)} m`,
      `${this.#at(x + radius, y + c)} ${this.#at(x + c, y + radius)} ${this.#at(x, y + radius)} c`,
      `${this.#at(x - c, y + radius)} ${this.#at(x - radius, y + c)} ${this.#at(x - radius, y)} c`,
      `${this.#at(x - radius, y - c)} ${this.#at(x - c, y - radius)} ${this.#at(x, y - radius)} c`,
      `${this.#at(x + c, y - radius)} ${this.#at(x + radius, y - c)} ${this.#at(x + radius, y)} c h`,
    ].join(' ')
    const plain = style ?? { weightMm: 0.1, colour: fill ?? '#000000' }
    this.rawPath(path, style === null ? 'f' : fill === undefined ? 'S' : 'B', plain, fill)
  }

  #style({ weightMm, colour, dashMm, round }: StrokeStyle): string {
    const style = `${colourOperands(colour)} RG ${number(weightMm * POINTS_PER_MM)} w [${(dashMm ?? [])
      .map((length) => number(length * POINTS_PER_MM))
      .join(' ')}] 0 d ${round === true ? 1 : 0} J ${round === true ? 1 : 0} j `
    if (style === this.#stroke) return ''
    this.#stroke = style
    return style
  }

  /** Draws between q and Q; the graphics state of before holds again afterwards. */
  saved(draw: () => void): void {
    const [fill, stroke] = [this.#fill, this.#stroke]
    this.#emit('q')
    draw()
    this.#emit('Q')
    this.#fill = fill
    this.#stroke = stroke
  }

  /** Shows a picture or a stored drawing at a place; `matrix` maps its own square or space to points. */
  object(name: string, ref: PDFRef, matrix: readonly [number, number, number, number, number, number]): void {
    this.objectsUsed.set(name, ref)
    this.#emit(`q ${matrix.map(number).join(' ')} cm /${name} Do Q`)
  }

  /** A link over a box, belonging to its own structure element. */
  link(owner: StructureElement, box: PageLink['box'], target: string, words: string): void {
    if (this.onlyMeasured) return
    const ref = this.nextRef()
    owner.kids.push({ page: this.index, annotation: ref })
    this.links.push({ ref, box, target, words, owner })
  }

  /** Content stream of the finished page. */
  content(): string {
    this.#close()
    this.#current = null
    return this.#operators.join('\n')
  }

  tags(keyOf: (link: PageLink) => number): PageTags {
    return {
      owners: this.#owners,
      annotations: this.links.map((link) => ({ ref: link.ref, owner: link.owner, key: keyOf(link) })),
    }
  }
}
