import type { CoatingMap } from '../../../shared-types/coating-map.ts'
import type { PlanPanel } from '../../../shared-types/figure.ts'
import { mapDrawing } from '../drawing/map-drawing.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { LINE_MM } from '../layout/page-geometry.ts'
import { textPieces } from '../layout/text-block.ts'
import { styles } from '../layout/text-style.ts'

/** Maps of the panels whose readings leave open how much filler there is; the section is left out without any. */
export function composeCoatingMaps(composer: Composer): void {
  const { coatingMaps } = composer.content
  if (coatingMaps.length === 0) return
  composer.openSection('coating-maps', 'Coating maps')
  composer.block({ title: 'Which panels' }, (owner) =>
    composer.text(
      owner,
      `Mapped are panels with five spots or more of which one is thicker than ${coatingMaps[0]?.thresholdUm} µm. The maps of the others can be drawn from the record at any time.`,
    ),
  )
  for (const map of coatingMaps) composeMap(composer, map)
  const [first] = coatingMaps
  composer.block({ title: 'Method' }, (owner) => composer.text(owner, first?.method ?? ''))
  composer.block({ title: 'What a map\ncannot tell' }, (owner) => composer.text(owner, first?.cannotTell ?? ''))
}

function panelOf(composer: Composer, map: CoatingMap): PlanPanel | undefined {
  return composer.content.plan.sheets
    .flatMap((sheet) => sheet.views)
    .find(({ id }) => id === map.view)
    ?.panels.find(({ panelId }) => panelId === map.panelId)
}

function composeMap(composer: Composer, map: CoatingMap): void {
  const panel = panelOf(composer, map)
  const layer = map.layers.find(({ id }) => id === 'thickness')
  if (panel === undefined || layer === undefined) return
  const name = composer.panelName(map.panelId)
  composer.flow.place(figurePieces(composer, map, panel, layer, name))
  composer.block({ title: name, note: 'computed from the spots', whole: true }, (owner) => {
    const line = (label: string, text: string) =>
      text === '' ? [] : composer.labelled(owner, label, [{ text, style: styles.text }], 32)
    return [
      ...line('paint', map.film?.words ?? ''),
      ...line(`over ${map.thresholdUm} µm`, map.fillerArea?.words ?? ''),
      ...line('volume above paint', map.fillerVolume?.words ?? ''),
      ...line(
        'surface',
        map.notAssessedM2 === null
          ? ''
          : `${map.assessedM2.toFixed(2)} m² mapped, ${map.notAssessedM2.toFixed(2)} m² not assessed.`,
      ),
      ...line('left out', map.leftOut.length === 0 ? '' : `${map.leftOut.join('; ')}.`),
      ...map.next.flatMap(({ words }, index) =>
        line(index === 0 ? 'read next, a' : String.fromCharCode(97 + index), words),
      ),
      ...line('reading on', map.stopping),
      ...line('gauge', `${map.gauge}.`),
    ]
  })
}

function figurePieces(
  composer: Composer,
  map: CoatingMap,
  panel: PlanPanel,
  layer: CoatingMap['layers'][number],
  name: string,
): Piece[] {
  const { section, document, geometry } = composer
  const drawing = mapDrawing(composer, panel, map, layer)
  const figure = section.add('Figure', {
    alternative: `Map of the thickness of the coating of the ${name}. ${map.spots.map(({ spot, um, orMore }) => `Spot ${spot}: ${um === null ? 'no reading' : `${orMore ? 'more than ' : ''}${Math.round(um)} µm`}`).join('; ')}. ${map.fillerArea?.words ?? ''}`,
  })
  const caption = [
    { text: `${composer.nextFigure()} `, style: styles.captionStrong },
    {
      text: `${name}, 1 : ${drawing.scale}. ${layer.title}, ${layer.unit}. Points: mean of each spot. Crosses: read next.`,
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
    ...textPieces(document, caption, {
      leftMm: geometry.leftMm,
      widthMm: geometry.mainWidthMm + geometry.sideWidthMm,
      owner: section.add('Caption'),
    }).map((piece) => ({ ...piece, keep: true })),
  ]
}
