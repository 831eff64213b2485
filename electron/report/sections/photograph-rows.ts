import type { Exhibit } from '../../../shared-types/exhibit.ts'
import { printedRules } from '../../../shared-types/tokens.ts'
import { POINTS_PER_MM } from '../document/page-canvas.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import { drawLocator, placeOnCar } from '../drawing/locator.ts'
import { drawPicked } from '../drawing/picked-lines.ts'
import type { Composer, StoredObject } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { breakLines, type Rich } from '../layout/line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { drawLine } from '../layout/text-block.ts'
import { inks, styles } from '../layout/text-style.ts'
import { cameraTime } from '../wording/dates.ts'
import { numbered, place } from '../wording/references.ts'
import { citedBy, placeWords } from './exhibits-words.ts'

const GUTTER_MM = 6
const HALF_WIDTH_MM = (FIELD_WIDTH_MM - GUTTER_MM) / 2
/** Pictures wider than this share of their height take the whole field. */
const PANORAMA = 2.2
/** Paper between a picture and the line below it, whose letters begin a little under its top. */
const BELOW_PICTURE_MM = 0.8
const LANDSCAPE_HEIGHT_MM = 14 * LINE_MM - BELOW_PICTURE_MM
const PORTRAIT_HEIGHT_MM = 19 * LINE_MM - BELOW_PICTURE_MM
const LABEL_WIDTH_MM = 17
const LOCATOR = { widthMm: 36, heightMm: 15 } as const
/** Captions above this many lines are cut here and stand whole in the table of exhibits. */
const MOST_CAPTION_LINES = 8

interface Placed {
  readonly exhibit: Exhibit
  readonly picture: StoredObject
  readonly cellWidth: number
  readonly width: number
  readonly height: number
}

/** Photographs in order of their numbers, two to a row; portraits and documents stand taller, panoramas take the field. */
export function photographRows(composer: Composer, exhibits: readonly Exhibit[]): Piece[] {
  const rows: Placed[][] = []
  for (const exhibit of exhibits) {
    const picture = composer.stored.pictures.get(exhibit.number)
    if (picture === undefined) continue
    const placed = fitted(exhibit, picture)
    const last = rows.at(-1)
    if (
      last !== undefined &&
      last.length === 1 &&
      last[0]?.cellWidth === HALF_WIDTH_MM &&
      placed.cellWidth === HALF_WIDTH_MM
    ) {
      last.push(placed)
    } else {
      rows.push([placed])
    }
  }
  return rows.flatMap((row, index) => [rowPiece(composer, row), ...(index < rows.length - 1 ? [gap(2)] : [])])
}

function fitted(exhibit: Exhibit, picture: StoredObject): Placed {
  const aspect = picture.width / picture.height
  const cellWidth = aspect > PANORAMA ? FIELD_WIDTH_MM : HALF_WIDTH_MM
  const mostHeight =
    aspect < 1 ? PORTRAIT_HEIGHT_MM : cellWidth === FIELD_WIDTH_MM ? PORTRAIT_HEIGHT_MM : LANDSCAPE_HEIGHT_MM
  const width = Math.min(cellWidth, mostHeight * aspect)
  return { exhibit, picture, cellWidth, width, height: width / aspect }
}

function rowPiece(composer: Composer, row: readonly Placed[]): Piece {
  const pictureLines = Math.ceil((Math.max(...row.map(({ height }) => height)) + BELOW_PICTURE_MM) / LINE_MM)
  const texts = row.map((placed) => cellText(composer, placed))
  const captionLines = Math.max(
    ...texts.map(({ caption, located }) => Math.max(caption.length, located ? LOCATOR.heightMm / LINE_MM : 1)),
  )
  const factLines = Math.max(...texts.map(({ facts }) => facts.reduce((sum, fact) => sum + fact.lines.length, 0)))
  return {
    lines: Math.ceil(pictureLines + captionLines + factLines) + 1,
    draw: (page, topMm) => {
      row.forEach((placed, index) => {
        const text = texts[index]
        if (text === undefined) return
        const left = composer.geometry.leftMm + index * (HALF_WIDTH_MM + GUTTER_MM)
        const below = topMm + pictureLines * LINE_MM
        composer.document.anchor(place.exhibit(placed.exhibit.number), page, topMm)
        if (page.onlyMeasured) return
        page.belongTo(text.figure)
        const top = below - BELOW_PICTURE_MM - placed.height
        page.object(placed.picture.name, placed.picture.ref, [
          placed.width * POINTS_PER_MM,
          0,
          0,
          placed.height * POINTS_PER_MM,
          left * POINTS_PER_MM,
          (page.heightMm - top - placed.height) * POINTS_PER_MM,
        ])
        const { photograph } = placed.exhibit
        for (const { picked } of composer.content.record.exhibits) {
          if (photograph === null || picked?.photograph !== placed.exhibit.number) continue
          const { width, height } = placed
          const { widthPx, heightPx } = photograph
          drawPicked(page, picked, { left, top, width, height, widthPx, heightPx })
        }
        text.caption.forEach((line, at) => {
          drawLine(composer.document, page, line, left, below + at * LINE_MM + BASELINE_MM, text.captionOwner)
        })
        const where = placeOnCar(composer, placed.exhibit.view, placed.exhibit.at, placed.exhibit.panelId)
        if (where !== null) {
          page.belongTo(text.figure)
          drawLocator(composer, page, where, {
            left: left + placed.cellWidth - LOCATOR.widthMm,
            top: below + 1.4,
            widthMm: LOCATOR.widthMm,
            heightMm: LOCATOR.heightMm - 2,
          })
        }
        const factsTop = below + Math.ceil(captionLines) * LINE_MM
        page.belongTo('artifact')
        page.line(left, factsTop, left + placed.cellWidth, factsTop, { weightMm: printedRules.thin, colour: inks.ink })
        let at = 0
        for (const fact of text.facts) {
          drawLine(composer.document, page, fact.label, left, factsTop + at * LINE_MM + BASELINE_MM, text.factsOwner)
          for (const line of fact.lines) {
            drawLine(
              composer.document,
              page,
              line,
              left + LABEL_WIDTH_MM,
              factsTop + at * LINE_MM + BASELINE_MM,
              text.factsOwner,
            )
            at += 1
          }
        }
      })
    },
  }
}

interface CellText {
  readonly figure: StructureElement
  readonly captionOwner: StructureElement
  readonly factsOwner: StructureElement
  readonly caption: ReturnType<typeof breakLines>
  readonly located: boolean
  readonly facts: readonly {
    readonly label: ReturnType<typeof breakLines>[number]
    readonly lines: ReturnType<typeof breakLines>
  }[]
}

function cellText(composer: Composer, { exhibit, cellWidth }: Placed): CellText {
  const located = placeOnCar(composer, exhibit.view, exhibit.at, exhibit.panelId) !== null
  const captionWidth = cellWidth - (located ? LOCATOR.widthMm + 3 : 0)
  const label = { text: `${numbered('E', exhibit.number)}   `, style: styles.captionStrong }
  const whole = breakLines(
    [label, { text: exhibit.caption === '' ? 'No caption.' : exhibit.caption, style: styles.caption }],
    captionWidth,
  )
  const tooLong = whole.length > MOST_CAPTION_LINES
  const onward = breakLines([{ text: '… in full in the table of exhibits.', style: styles.tableHead }], captionWidth)
  const fact = (name: string, rich: Rich) => {
    const [first] = breakLines([{ text: name, style: styles.cellSoft }], LABEL_WIDTH_MM)
    return {
      label: first ?? { parts: [], width: 0 },
      lines: breakLines(rich, cellWidth - LABEL_WIDTH_MM).slice(0, MOST_CAPTION_LINES),
    }
  }
  const { photograph } = exhibit
  return {
    figure: composer.section.add('Figure', {
      alternative: `Photograph ${numbered('E', exhibit.number)}: ${exhibit.caption === '' ? 'no caption' : exhibit.caption.slice(0, 500)}`,
    }),
    captionOwner: composer.section.add('Caption'),
    factsOwner: composer.section.add('P'),
    caption: tooLong ? [...whole.slice(0, MOST_CAPTION_LINES - 1), ...onward] : whole,
    located,
    facts: [
      fact('where', placeWords(composer, exhibit, styles.cell)),
      fact('taken', [
        { text: cameraTime(photograph?.takenAt ?? null, photograph?.takenOffset ?? null), style: styles.cell },
        { text: exhibit.madeBy === '' ? '' : `, ${exhibit.madeBy}`, style: styles.cell },
      ]),
      fact('SHA-256', [
        { text: `${(photograph?.sha256 ?? '').slice(0, 12).replace(/(.{4})(?=.)/g, '$1 ')} …`, style: styles.cellMono },
      ]),
      fact('cited by', citedBy(composer, exhibit.number, styles.cell)),
    ],
  }
}
