import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import type { PDFRef } from '../document/pdf-objects.ts'
import type { Anchor, ReportDocument } from '../document/report-document.ts'
import type { StructureElement, StructureType } from '../document/structure-tree.ts'
import type { ReportContent } from '../report-content.ts'
import { NARROW } from '../wording/numbers.ts'
import { numbered, partSuffix, place } from '../wording/references.ts'
import { Flow, gap, type Piece } from './flow.ts'
import { breakLines, type Rich, type Span } from './line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM, LINE_MM, type PageGeometry } from './page-geometry.ts'
import { furnish, type RunningMatter, runningLines } from './running-matter.ts'
import { type TableContent, tablePieces } from './table.ts'
import { drawLine, textPieces } from './text-block.ts'
import { inks, styles, type TextStyle } from './text-style.ts'

/** A stored picture or drawing: its object and its size in its own units. */
export interface StoredObject {
  readonly name: string
  readonly ref: PDFRef
  readonly width: number
  readonly height: number
}

export interface Stored {
  readonly pictures: ReadonlyMap<number, StoredObject>
  /** Outline of each view of the plan, a drawing of `width` by `height` millimetres of the car. */
  readonly outlines: ReadonlyMap<string, StoredObject>
}

/**
 * What the pass before found out: where each place came to stand, and how many pages there are. The first pass has none
 * before it: `anchors` is null, and every place is taken to exist, as most do.
 */
export interface PassBefore {
  readonly anchors: ReadonlyMap<string, Anchor> | null
  readonly pages: number
}

const SPACE_ABOVE_RULE_MM = 3
const SECTION_HEAD_LINES = 3

/** The hand that sets a report: sections ask it for heads, blocks, tables and references. */
export class Composer {
  readonly flow: Flow
  readonly panels: ReadonlyMap<string, PanelDefinition>
  section: StructureElement
  readonly #running: Omit<RunningMatter, 'section'>
  #sections = 0
  #tables = 0
  #figures = 0

  constructor(
    readonly content: ReportContent,
    readonly document: ReportDocument,
    readonly geometry: PageGeometry,
    readonly stored: Stored,
    readonly before: PassBefore,
  ) {
    this.panels = new Map(content.panels.panels.map((panel) => [panel.id, panel]))
    this.section = document.root.add('Sect')
    this.#running = { lines: runningLines(content), pages: before.pages }
    this.flow = new Flow(document, geometry, (page, section) =>
      furnish(document, page, geometry, { ...this.#running, section }),
    )
  }

  /** Opens a section; its head stands above what is placed next, on a page it opens or under the section before. */
  openSection(name: string, title: string): void {
    this.#sections += 1
    const number = String(this.#sections)
    this.section = this.document.root.add('Sect')
    const head = this.section.add('H1')
    const { leftMm, mainLeftMm, mainWidthMm } = this.geometry
    const target = place.section(name)
    this.document.bookmarks.push({ title: `${number}  ${title}`, level: 1, target })
    this.flow.open(`${number}  ${title}`, {
      lines: SECTION_HEAD_LINES,
      draw: (page, topMm) => {
        this.document.anchor(target, page, topMm)
        const draw = (text: string, style: TextStyle, left: number, width: number) => {
          const [line] = breakLines([{ text, style }], width)
          if (line !== undefined) drawLine(this.document, page, line, left, topMm + LINE_MM + 3, head)
        }
        draw(number, styles.sectionNumber, leftMm, mainLeftMm - leftMm)
        draw(title, styles.section, mainLeftMm, mainWidthMm)
      },
    })
  }

  bookmark(title: string, target: string): void {
    this.document.bookmarks.push({ title, level: 2, target })
  }

  nextTable(): string {
    this.#tables += 1
    return `Table ${this.#tables}.`
  }

  nextFigure(): string {
    this.#figures += 1
    return `Figure ${this.#figures}.`
  }

  /** A block: rule over the field, side head and its note in the side column, pieces in the main column. */
  block(
    head: {
      readonly title: string
      readonly note?: string
      readonly titleRich?: Rich
      readonly anchors?: string[]
      readonly whole?: boolean
    },
    makePieces: (owner: StructureElement) => readonly Piece[],
    headType: StructureType = 'H2',
  ): void {
    const title = head.titleRich ?? [{ text: head.title, style: styles.sideHead }]
    const side = (continued: boolean) => [
      ...breakLines(title, this.geometry.sideWidthMm).map((line) => ({ line, note: false })),
      ...breakLines(
        [{ text: continued ? 'continued' : (head.note ?? ''), style: styles.sideNote }],
        this.geometry.sideWidthMm,
      )
        .filter(({ parts }) => parts.length > 0)
        .map((line) => ({ line, note: true })),
    ]
    const rulePiece = (owner: { title: StructureElement; note: StructureElement } | 'artifact'): Piece => ({
      lines: 1,
      keep: true,
      draw: (page, topMm) => {
        const { leftMm } = this.geometry
        const y = topMm + SPACE_ABOVE_RULE_MM
        page.belongTo('artifact')
        page.line(leftMm, y, leftMm + FIELD_WIDTH_MM, y, { weightMm: 0.2, colour: inks.ink })
        for (const anchor of owner === 'artifact' ? [] : (head.anchors ?? [])) this.document.anchor(anchor, page, y)
        side(owner === 'artifact').forEach(({ line, note }, index) => {
          const baseline = topMm + LINE_MM * (index + 1) + BASELINE_MM
          const own = owner === 'artifact' ? owner : note ? owner.note : owner.title
          drawLine(this.document, page, line, leftMm, baseline, own)
        })
      },
    })
    const titleElement = this.section.add(headType)
    const noteElement = this.section.add('P')
    const sideLines = side(false).length
    const pieces = [...makePieces(this.section)]
    const have = pieces.reduce((sum, piece) => sum + piece.lines, 0)
    if (have < sideLines) pieces.push(gap(sideLines - have))
    const whole = head.whole === true && have < this.geometry.lines - 1
    let kept = 0
    const again = () => [rulePiece('artifact')]
    const held = pieces.map((piece, index) => {
      kept += piece.lines
      const last = index === pieces.length - 1
      const keep = piece.keep === true || kept < Math.min(sideLines, 12) || (whole && !last)
      return { ...piece, keep, onBreak: piece.onBreak ?? again }
    })
    this.flow.place([rulePiece({ title: titleElement, note: noteElement }), ...held])
  }

  /** Running text of the main column. */
  text(owner: StructureElement, rich: Rich | string, more: { type?: StructureType; indentMm?: number } = {}): Piece[] {
    const indent = more.indentMm ?? 0
    return textPieces(this.document, typeof rich === 'string' ? [{ text: rich, style: styles.text }] : rich, {
      leftMm: this.geometry.mainLeftMm + indent,
      widthMm: this.geometry.mainWidthMm - indent,
      owner: owner.add(more.type ?? 'P'),
    })
  }

  /** A label in soft ink and what it says, hanging: "suspected cause  water behind the arch". */
  labelled(owner: StructureElement, label: string | Rich, rich: Rich, labelWidthMm = 30): Piece[] {
    const element = owner.add('P')
    const left = this.geometry.mainLeftMm
    const labels = breakLines(
      typeof label === 'string' ? [{ text: label, style: styles.cellSoft }] : label,
      labelWidthMm - 2,
    )
    const body = textPieces(this.document, rich, {
      leftMm: left + labelWidthMm,
      widthMm: this.geometry.mainWidthMm - labelWidthMm,
      owner: element,
    })
    // A label may run to more lines than what it says; its lines stay on one page.
    const rest = labels.slice(body.length).map(() => gap(1))
    return [...body, ...rest].map((piece, index) => ({
      ...piece,
      gap: false,
      keep: piece.keep === true || index < labels.length - 1,
      draw: (page, topMm) => {
        const line = labels[index]
        if (line !== undefined) drawLine(this.document, page, line, left, topMm + BASELINE_MM, element)
        piece.draw(page, topMm)
      },
    }))
  }

  /** Pieces the first of which is a named place. */
  anchored(target: string, pieces: readonly Piece[]): Piece[] {
    return pieces.map((piece, index) => ({
      ...piece,
      draw: (page, topMm) => {
        if (index === 0) this.document.anchor(target, page, topMm)
        piece.draw(page, topMm)
      },
    }))
  }

  /** A table of the main column, or of the whole field. */
  table(owner: StructureElement, content: Omit<TableContent, 'label'>, wide = false): Piece[] {
    const left = wide ? this.geometry.leftMm : this.geometry.mainLeftMm
    return tablePieces(this.document, owner, left, { ...content, label: this.nextTable() })
  }

  panelName(id: string): string {
    const definition = this.panels.get(id)
    return definition === undefined ? id : panelName(definition, this.content.record.commission.names)
  }

  /** Name of a part of the list with its side or number; its id when the list does not hold it. */
  partName(id: string): string {
    const known = this.content.parts.find((part) => part.id === id.replace(/\.([LR]|[1-9][0-9]?)$/, ''))
    return `${known?.[this.content.record.commission.names] ?? id}${partSuffix(id)}`
  }

  /** Whether the report has a place of that name. */
  isKnown(target: string): boolean {
    return this.before.anchors?.has(target) ?? true
  }

  /** A span that leads to a place, if the report has that place. */
  linked(text: string, style: TextStyle, target: string): Span {
    return { text, style, link: this.isKnown(target) ? target : undefined }
  }

  finding(number: number, style: TextStyle = styles.cellReference): Span {
    return this.linked(numbered('F', number), style, place.finding(number))
  }

  exhibit(number: number, style: TextStyle = styles.cell): Span {
    return this.linked(numbered('E', number), style, place.exhibit(number))
  }

  /** "p. 7", the page on which a place came to stand. */
  page(target: string, style: TextStyle): Span {
    const anchor = this.before.anchors?.get(target)
    return this.linked(`p.${NARROW}${anchor === undefined ? '00' : anchor.page + 1}`, style, target)
  }

  /** References joined by commas, or a word when there are none. */
  list(spans: readonly Span[], none: string, style: TextStyle): Rich {
    if (spans.length === 0) return [{ text: none, style }]
    return spans.flatMap((span, index) => (index === 0 ? [span] : [{ text: ', ', style }, span]))
  }

  exhibits(numbers: readonly number[], style: TextStyle = styles.cell, none = '—'): Rich {
    return this.list(
      numbers.map((number) => this.exhibit(number, style)),
      none,
      style,
    )
  }

  findings(numbers: readonly number[], style: TextStyle = styles.cellReference, none = '—'): Rich {
    return this.list(
      numbers.map((number) => this.finding(number, style)),
      none,
      { ...style, face: 'text', colour: inks.ink },
    )
  }
}

/** Words as they are, or "not stated". */
export const stated = (text: string): string => (text.trim() === '' ? 'not stated' : text)
