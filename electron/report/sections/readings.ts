import { coatingFigure, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import { LINES_BESIDE_HEAD } from '../layout/table.ts'
import { styles } from '../layout/text-style.ts'
import { dayText, instantText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { NARROW } from '../wording/numbers.ts'
import { numbered, place } from '../wording/references.ts'
import { declaredError, spotFigures } from '../wording/spot-figures.ts'

/** Coating thickness: gauges, their checks, and every spot with its values. */
export function composeReadings(composer: Composer): void {
  const { gauges, gaugeChecks, spots, commission, panels } = composer.content.record
  composer.openSection('readings', 'Coating readings')
  const unit = commission.coatingUnit
  const readable = composer.content.panels.panels.filter(({ gaugeReadable }) => gaugeReadable !== 'no').length
  const touched = new Set(spots.map(({ panelId }) => panelId)).size
  composer.block({ title: 'Sample' }, (owner) =>
    composer.text(
      owner,
      `${spots.length} ${spots.length === 1 ? 'spot' : 'spots'} on ${touched} of ${readable} panels a gauge can read; ${panels.filter(({ inspection }) => inspection === 'inspected').length} panels were inspected. ${fixedTexts().sampling}`,
    ),
  )
  composer.block({ title: 'Gauges', note: 'and their checks' }, (owner) => [
    ...(gauges.length === 0 ? composer.text(owner, 'No gauge is recorded.') : []),
    ...gauges.flatMap((gauge) =>
      composer.anchored(
        place.gauge(gauge.number),
        composer.labelled(owner, numbered('G', gauge.number), [
          {
            text: `${gauge.name}; serial ${stated(gauge.serial)}; ${gauge.principle}; range ${gauge.rangeUm === null ? 'not stated' : `to ${coatingFigure(gauge.rangeUm, unit)}${NARROW}${unit}`}; ${declaredError(gauge, commission)}; certified ${gauge.certifiedOn === null ? 'on no stated day' : `on ${dayText(gauge.certifiedOn)}`}, certificate ${stated(gauge.certificate)}.`,
            style: styles.text,
          },
        ]),
      ),
    ),
    ...checksTable(composer, owner),
    ...(gaugeChecks.length === 0 ? composer.text(owner, 'No check of a gauge is recorded.') : []),
  ])
  composer.block({ title: 'Spots', note: `values in ${unit}` }, (owner) =>
    spots.length === 0
      ? composer.text(owner, 'No coating was read.')
      : [gap(LINES_BESIDE_HEAD, true), ...spotTable(composer)],
  )
}

function checksTable(composer: Composer, owner: StructureElement): Piece[] {
  const { gaugeChecks, commission } = composer.content.record
  if (gaugeChecks.length === 0) return []
  const { unit, figure } = coatingMeasures(commission).checkedThickness
  const cell = (text: string) => [{ text, style: styles.cell }]
  return composer.table(owner, {
    caption: [{ text: `Checks against a shim or bare metal, ${unit}.`, style: styles.caption }],
    columns: [
      { head: '', widthMm: 10 },
      { head: 'gauge', widthMm: 12 },
      { head: 'when', widthMm: 44 },
      { head: 'shim', widthMm: 16, align: 'right' },
      { head: 'read', widthMm: 48 },
    ],
    rows: gaugeChecks.map((check) => ({
      cells: [
        cell(numbered('H', check.number)),
        [composer.linked(numbered('G', check.gauge), styles.cell, place.gauge(check.gauge))],
        cell(`${check.when}; ${instantText(check.at)}`),
        cell(check.shimUm === 0 ? 'bare metal' : figure(check.shimUm)),
        cell(`${check.readUm.map(figure).join('; ')}${check.note === '' ? '' : `. ${check.note}`}`),
      ],
    })),
  })
}

function spotTable(composer: Composer): Piece[] {
  const { spots, commission } = composer.content.record
  const unit = commission.coatingUnit
  const order = new Map(composer.content.panels.panels.map(({ id, stop }) => [id, stop]))
  const ordered = [...spots].sort(
    (a, b) => (order.get(a.panelId) ?? 999) - (order.get(b.panelId) ?? 999) || a.number - b.number,
  )
  const marked = new Map(composer.content.coatingCar.marked.map(({ spot, why }) => [spot, why]))
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  return composer.table(
    composer.section,
    {
      caption: cell(
        `Every spot, in walking order; ${unit}. Half range: half the difference of largest and smallest value. The gauge’s declared error is above; no other uncertainty is stated for a spot.`,
        styles.caption,
      ),
      columns: [
        { head: '', widthMm: 10 },
        { head: 'panel, place', widthMm: 48 },
        { head: 'gauge, mode', widthMm: 24 },
        { head: 'values', widthMm: 37 },
        { head: 'n', widthMm: 10, align: 'right' },
        { head: 'mean', widthMm: 13, align: 'right' },
        { head: 'median', widthMm: 13, align: 'right' },
        { head: 'half range', widthMm: 15, align: 'right' },
      ],
      rows: ordered.map((spot) => {
        const figures = spotFigures(spot.values, unit)
        const why = marked.get(spot.number)
        return {
          anchors: [place.spot(spot.number)],
          cells: [
            cell(numbered('R', spot.number)),
            [
              composer.linked(composer.panelName(spot.panelId), styles.cell, place.panel(spot.panelId)),
              ...(spot.where === '' ? [] : cell(`, ${spot.where}`)),
              ...(spot.note === '' ? [] : cell(`. ${spot.note}`, styles.cellSoft)),
              ...(why === undefined ? [] : cell(`. Marked: ${why.join('; ')}`)),
              ...(spot.exhibits.length === 0 ? [] : [...cell('; '), ...composer.exhibits(spot.exhibits)]),
            ],
            [
              spot.gauge === null
                ? { text: 'gauge not noted', style: styles.cell }
                : composer.linked(numbered('G', spot.gauge), styles.cell, place.gauge(spot.gauge)),
              ...cell(`, ${spot.mode}${spot.substrate === 'unknown' ? '' : `, over ${spot.substrate}`}`),
            ],
            cell(figures.values),
            cell(figures.count),
            cell(figures.mean),
            cell(figures.median),
            cell(figures.halfRange),
          ],
        }
      }),
    },
    true,
  )
}
