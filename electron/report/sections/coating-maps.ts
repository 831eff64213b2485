import type { CoatingMap } from '../../../shared-types/coating-map.ts'
import { type CoatingMeasures, coatingFigure, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { PlanPanel } from '../../../shared-types/figure.ts'
import type { PageCanvas } from '../document/page-canvas.ts'
import { cutDrawing } from '../drawing/cut-drawing.ts'
import { mapDrawing } from '../drawing/map-drawing.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { textPieces } from '../layout/text-block.ts'
import { styles } from '../layout/text-style.ts'
import { numbered, place } from '../wording/references.ts'
import { composeCoatingCar } from './coating-car.ts'

const LABEL_MM = 32

/** The whole car on one scale, then maps of the panels whose readings leave open how much filler there is; left out without a reading. */
export function composeCoatingMaps(composer: Composer): void {
  const { coatingMaps, coatingCar } = composer.content
  const { thickness } = measuresOf(composer)
  if (coatingMaps.length === 0 && coatingCar.rows.length === 0) return
  composer.openSection('coating-maps', 'Coating maps')
  composeCoatingCar(composer)
  if (coatingMaps.length === 0) return
  composer.block({ title: 'Which panels' }, (owner) =>
    composer.text(
      owner,
      `Mapped are panels with five spots or more of which one is thicker than ${thickness.text(coatingMaps[0]?.thresholdUm ?? 0)}. The maps of the others can be drawn from the record at any time.`,
    ),
  )
  const shared = sharedBy(coatingMaps)
  for (const map of coatingMaps) composeMap(composer, map, shared)
  const [first] = coatingMaps
  composer.block({ title: 'Of every map' }, (owner) =>
    groundsOf(first).flatMap(([label, texts]) =>
      labelledLines(
        composer,
        owner,
        label,
        texts.filter((text) => shared.has(text)),
      ),
    ),
  )
  composer.block({ title: 'Method' }, (owner) => composer.text(owner, first?.method ?? ''))
  composer.block({ title: 'What a map\ncannot tell' }, (owner) => composer.text(owner, first?.cannotTell ?? ''))
}

const measuresOf = ({ content }: Composer): CoatingMeasures => coatingMeasures(content.record.commission)

function panelOf(composer: Composer, map: CoatingMap): PlanPanel | undefined {
  return composer.content.plan.sheets
    .flatMap((sheet) => sheet.views)
    .find(({ id }) => id === map.view)
    ?.panels.find(({ panelId }) => panelId === map.panelId)
}

/** What the readings of a map rest on, by label. */
const groundsOf = (map: CoatingMap | undefined): readonly (readonly [string, readonly string[]])[] =>
  map === undefined
    ? []
    : [
        ['gauge', [`${map.gauge}.`]],
        ['its checks', map.checks],
        ['ranges used', [map.ranges]],
      ]

/** Grounds that are the same for every map are printed once, after the last. */
function sharedBy(maps: readonly CoatingMap[]): ReadonlySet<string> {
  const [first, ...rest] = maps.map((map) => groundsOf(map).flatMap(([, texts]) => texts))
  return new Set(first?.filter((text) => rest.every((texts) => texts.includes(text))))
}

function labelledLines(composer: Composer, owner: Composer['section'], label: string, texts: readonly string[]) {
  return texts
    .filter((text) => text !== '')
    .flatMap((text, index) =>
      composer.labelled(owner, index === 0 ? label : '', [{ text, style: styles.text }], LABEL_MM),
    )
}

function composeMap(composer: Composer, map: CoatingMap, shared: ReadonlySet<string>): void {
  const panel = panelOf(composer, map)
  const layer = map.layers.find(({ id }) => id === 'thickness')
  if (panel === undefined || layer === undefined) return
  const name = composer.panelName(map.panelId)
  const { thickness, surface } = measuresOf(composer)
  composer.flow.place(figurePieces(composer, map, panel, layer, name))
  composer.block({ title: name, note: 'computed from the spots' }, (owner) => {
    const lines = (label: string, texts: readonly string[]) => labelledLines(composer, owner, label, texts)
    const line = (label: string, text: string) => lines(label, [text])
    return [
      ...line('reads as', map.conclusion),
      ...lines('lead or filler', map.modes),
      ...line('paint', map.film?.words ?? ''),
      ...line(`over ${thickness.text(map.thresholdUm)}`, map.fillerArea?.words ?? ''),
      ...line('volume above paint', map.fillerVolume?.words ?? ''),
      ...lines(
        'along the cut',
        composer.content.coatingCuts.find(({ panelId }) => panelId === map.panelId)?.words ?? [],
      ),
      ...line(
        'surface',
        map.notAssessedM2 === null
          ? ''
          : `${surface.text(map.assessedM2)} mapped, ${surface.text(map.notAssessedM2)} not assessed.`,
      ),
      ...line('left out', map.leftOut.length === 0 ? '' : `${map.leftOut.join('; ')}.`),
      ...map.next.flatMap(({ words }, index) =>
        line(index === 0 ? 'read next, a' : String.fromCharCode(97 + index), words),
      ),
      ...line('reading on', map.stopping),
      ...line('by ranges', map.classes.length === 0 ? '' : `${map.classes.join('. ')}.`),
      ...groundsOf(map).flatMap(([label, texts]) =>
        lines(
          label,
          texts.filter((text) => !shared.has(text)),
        ),
      ),
      ...readingTable(composer, owner, map),
    ]
  })
}

/** The readings a map rests on: as read, put right, and what is to be known of them. */
function readingTable(composer: Composer, owner: Composer['section'], map: CoatingMap): Piece[] {
  const unit = composer.content.record.commission.coatingUnit
  const cell = (text: string) => [{ text, style: styles.cell }]
  const figure = (um: number | null, orMore: boolean) =>
    um === null ? 'no reading' : `${orMore ? '> ' : ''}${coatingFigure(um, unit)}`
  return composer.table(owner, {
    caption: [
      {
        text: `Readings of this map, mean of each spot, ${unit}; u is the gauge’s standard uncertainty.`,
        style: styles.caption,
      },
    ],
    columns: [
      { head: 'spot', widthMm: 14 },
      { head: 'as read', widthMm: 20, align: 'right' },
      { head: 'put right', widthMm: 20, align: 'right' },
      { head: 'u', widthMm: 12, align: 'right' },
      { head: 'to be known', widthMm: 58 },
    ],
    rows: map.spots.map(({ spot, um, readUm, orMore, uncertaintyUm, flags }) => ({
      cells: [
        [composer.linked(numbered('R', spot), styles.cell, place.spot(spot))],
        cell(figure(readUm, orMore)),
        cell(figure(um, orMore)),
        cell(uncertaintyUm === null ? '—' : coatingFigure(uncertaintyUm, unit)),
        cell(flags.join('; ')),
      ],
    })),
  })
}

/** What the cut shows, and by which rule it was laid. */
const cutCaption = (rule: string): string =>
  ` At the foot: cut from 1 to 2, ${rule}. Line: middle; grey: nine draws of ten; dashes: paint alone with its spread; thin line: filler from there; rings: readings near the line, with an arrow where the gauge’s range ended; left blank: not assessed.`

function figurePieces(
  composer: Composer,
  map: CoatingMap,
  panel: PlanPanel,
  layer: CoatingMap['layers'][number],
  name: string,
): Piece[] {
  const { section: owner, document, geometry } = composer
  const { thickness } = measuresOf(composer)
  const cut = composer.content.coatingCuts.find(({ panelId }) => panelId === map.panelId)
  const drawing = mapDrawing(composer, panel, map, layer, {
    leftMm: geometry.leftMm,
    widthMm: FIELD_WIDTH_MM - 10,
    tallestMm: 72,
    figures: true,
    cut: cut ?? null,
  })
  const section = cut?.figure == null ? null : cutDrawing(composer, cut.figure, geometry.leftMm, FIELD_WIDTH_MM)
  const beside = map.layers
    .filter(({ id }) => id !== layer.id)
    .map((other, index) => ({
      other,
      drawing: mapDrawing(composer, panel, map, other, {
        leftMm: geometry.leftMm + index * (FIELD_WIDTH_MM / 2 + 2),
        widthMm: FIELD_WIDTH_MM / 2 - 4,
        tallestMm: 40,
        figures: false,
        cut: null,
      }),
    }))
  const figure = owner.add('Figure', {
    alternative:
      `Map of the thickness of the coating of the ${name}. ${map.spots.map(({ spot, um, orMore }) => `Spot ${spot}: ${um === null ? 'no reading' : `${orMore ? 'more than ' : ''}${thickness.text(um)}`}`).join('; ')}. ${map.fillerArea?.words ?? ''} ${cut?.figure?.textAlternative ?? ''}`.trim(),
  })
  const caption = [
    { text: `${composer.nextFigure()} `, style: styles.captionStrong },
    {
      text: `${name}, 1 : ${drawing.scale}. ${layer.title}, ${layer.printed.unit}. Points: mean of each spot put right by the gauge’s checks. Crosses: read next.${map.spots.some(({ marked }) => marked) ? ' Struck through: something speaks against the reading, named in the table.' : ''} Figures on lines: value of the contour. Below, 1 : ${beside[0]?.drawing.scale ?? drawing.scale}: ${beside.map(({ other }) => `${other.title.charAt(0).toLowerCase()}${other.title.slice(1)}, ${other.printed.unit}`).join('; ')}.${cut === undefined || map.cut === null ? '' : cutCaption(map.cut.rule)}`,
      style: styles.caption,
    },
  ]
  return [
    gap(1, true),
    {
      lines: drawing.lines,
      keep: true,
      draw: (page, topMm) => drawing.draw(page, topMm + LINE_MM / 2, figure),
    },
    {
      lines: Math.max(0, ...beside.map(({ drawing: own }) => own.lines)),
      keep: true,
      draw: (page, topMm) => {
        for (const { drawing: own } of beside) own.draw(page, topMm + LINE_MM / 2, figure)
      },
    },
    ...(section === null
      ? []
      : [
          {
            lines: section.lines,
            keep: true,
            draw: (page: PageCanvas, topMm: number) => section.draw(page, topMm, figure),
          },
        ]),
    ...textPieces(document, caption, {
      leftMm: geometry.leftMm,
      widthMm: geometry.mainWidthMm + geometry.sideWidthMm,
      owner: owner.add('Caption'),
    }).map((piece) => ({ ...piece, keep: true })),
  ]
}
