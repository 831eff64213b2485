import { coatingMeasures, type ShownQuantity } from '../../../shared-types/coating-measures.ts'
import type { AreaJudgement, Because, NarrowedRange, WouldNarrow } from '../../../shared-types/judgement.ts'
import { statesBesideBars } from '../../../shared-types/states-beside-bars.ts'
import { shareBars } from '../drawing/share-bars.ts'
import type { Composer } from '../layout/composer.ts'
import type { Span } from '../layout/line-breaking.ts'
import { numberedList } from '../layout/listed.ts'
import { styles } from '../layout/text-style.ts'
import { dayText } from '../wording/dates.ts'
import { figure, NARROW, shareBounds } from '../wording/numbers.ts'
import { numbered, place } from '../wording/references.ts'

const MOST_REASONS = 12
const MOST_TO_LOOK_AT = 12

/** Shares of originality as bounds: by area of the body, by state, by group of parts; the steps behind them; open questions. */
export function composeOriginality(composer: Composer): void {
  const { judgement } = composer.content
  composer.openSection('originality', 'Originality')
  const surface = surfaceIn(composer)
  const areas = [judgement.whole, ...judgement.areas]
  const caption = (text: string) => [
    { text: `${composer.nextFigure()} `, style: styles.captionStrong },
    { text, style: styles.caption },
  ]
  const weighed = judgement.unweighed === null ? '' : ' and the weights set'
  composer.block({ title: 'Metal', note: `computed, by area${weighed}` }, (owner) =>
    shareBars(
      composer,
      owner,
      areas.map((area) => ({ ...area.originalMetal, label: area.label, basis: areaBasis(area, surface) })),
      caption('Original metal: at least the solid bar, at most the solid and the open bar.'),
    ),
  )
  composer.block({ title: 'Paint', note: `computed, by area${weighed}` }, (owner) =>
    shareBars(
      composer,
      owner,
      areas.map((area) => ({ ...area.factoryPaint, label: area.label, basis: areaBasis(area, surface) })),
      caption('Factory finish: at least the solid bar, at most the solid and the open bar.'),
    ),
  )
  if (judgement.parts.length > 0) {
    composer.block({ title: 'Parts', note: `computed, by count${weighed}` }, (owner) =>
      shareBars(composer, owner, judgement.parts, caption(`Parts as fitted at the factory, by count${weighed}.`)),
    )
  }
  composer.block({ title: 'Weights', note: 'the user’s' }, (owner) => weights(composer, owner))
  composer.block({ title: 'States', note: 'of the whole body' }, (owner) => statesTable(composer, owner))
  composer.block({ title: 'Because', note: 'the steps behind the shares' }, (owner) =>
    numberedList(
      composer,
      owner,
      [...judgement.whole.originalMetal.because, ...judgement.whole.factoryPaint.because]
        .slice(0, MOST_REASONS)
        .map((step) => becauseLine(composer, step)),
    ),
  )
  if (judgement.wouldNarrow.length > 0) {
    composer.block({ title: 'What to look at', note: 'what keeps a range open most' }, (owner) =>
      narrowing(composer, owner),
    )
  }
  composer.block({ title: 'Open questions' }, (owner) =>
    judgement.openQuestions.length === 0
      ? composer.text(owner, 'None is listed.')
      : numberedList(
          composer,
          owner,
          judgement.openQuestions.map((question) => [
            { text: `${question.text} `, style: styles.text },
            { text: `Would settle it: ${question.wouldSettle}`, style: styles.soft },
          ]),
        ),
  )
}

/** The open things that keep a range open most, with by how many points of a hundred settling each would narrow it. */
function narrowing(composer: Composer, owner: Composer['section']) {
  const { wouldNarrow } = composer.content.judgement
  const cell = (text: string) => [{ text, style: styles.cell }]
  const shown = wouldNarrow.slice(0, MOST_TO_LOOK_AT)
  const more = wouldNarrow.length - shown.length
  const points = (thing: WouldNarrow, range: NarrowedRange['range']) => {
    const found = thing.narrows.find((each) => each.range === range)
    return cell(found === undefined ? '' : found.points < 0.05 ? 'under 0.1' : figure(found.points, 1))
  }
  return composer.table(owner, {
    caption: [
      {
        text: `By how many points of a hundred each range becomes narrower once the thing is settled, whichever way.${more > 0 ? ` ${more} more things are open, each with less.` : ''}`,
        style: styles.caption,
      },
    ],
    columns: [
      { head: 'thing', widthMm: 42 },
      { head: 'open, since', widthMm: 46 },
      { head: 'metal', widthMm: 14, align: 'right' },
      { head: 'paint', widthMm: 14, align: 'right' },
      { head: 'parts', widthMm: 14, align: 'right' },
    ],
    rows: shown.map((thing) => ({
      cells: [
        cell(thing.label),
        cell(thing.how),
        points(thing, 'original metal'),
        points(thing, 'factory finish'),
        points(thing, 'parts'),
      ],
    })),
  })
}

/** The weights the user set, with who set them and when; the shares without them; and the basis in words. */
function weights(composer: Composer, owner: Composer['section']) {
  const { weightsSet, unweighed, weights: words } = composer.content.judgement
  const cell = (text: string) => [{ text, style: styles.cell }]
  const basis = composer.text(owner, [{ text: words, style: styles.running }])
  if (unweighed === null) return [...composer.text(owner, 'None is set.'), ...basis]
  const plain = [
    `${shareBounds(unweighed.originalMetal.lowPercent, unweighed.originalMetal.highPercent)} original metal`,
    `${shareBounds(unweighed.factoryPaint.lowPercent, unweighed.factoryPaint.highPercent)} factory finish`,
    ...(unweighed.parts === null
      ? []
      : [`${shareBounds(unweighed.parts.lowPercent, unweighed.parts.highPercent)} of its parts`]),
  ].join(', ')
  return [
    ...composer.table(owner, {
      caption: [{ text: 'How many times each thing counts, by whom it was set, and why.', style: styles.caption }],
      columns: [
        { head: 'weight of', widthMm: 44 },
        { head: 'times', widthMm: 12, align: 'right' },
        { head: 'counts for', widthMm: 20 },
        { head: 'set by', widthMm: 30 },
        { head: 'why', widthMm: 24 },
      ],
      rows: weightsSet.map((weight) => ({
        cells: [
          cell(`${weight.label}, ${weight.sort}`),
          cell(String(weight.factor)),
          cell(`${weight.things} ${weight.sort.includes('part') ? 'parts' : 'panels'}`),
          cell(`${weight.setBy === '' ? 'not named' : weight.setBy}, ${dayText(weight.setAt.slice(0, 10))}`),
          cell(weight.reason === '' ? 'not stated' : weight.reason),
        ],
      })),
    }),
    ...composer.text(owner, `Without them the whole car stands at ${plain}.`),
    ...basis,
  ]
}

const surfaceIn = ({ content }: Composer): ShownQuantity => coatingMeasures(content.record.commission).surface

const areaBasis = (area: AreaJudgement, surface: ShownQuantity): string =>
  `${surface.figure(area.seenAreaM2)} of ${surface.figure(area.areaM2)}${NARROW}${surface.unit} seen`

function statesTable(composer: Composer, owner: Composer['section']) {
  const { whole, unweighed } = composer.content.judgement
  const bounds = 'Share of the surface in each state: bounds, since the unseen may be anything.'
  const surface = surfaceIn(composer)
  const cell = (text: string) => [{ text, style: styles.cell }]
  const row = (kind: string) => (state: AreaJudgement['metal'][number]) => ({
    cells: [
      cell(kind),
      cell(state.state),
      cell(`${surface.figure(state.areaM2)}${NARROW}${surface.unit}`),
      cell(shareBounds(state.lowPercent, state.highPercent)),
    ],
  })
  return composer.table(owner, {
    caption: [{ text: `${bounds} ${statesBesideBars(whole, unweighed !== null)}`.trim(), style: styles.caption }],
    columns: [
      { head: '', widthMm: 20 },
      { head: 'state', widthMm: 54 },
      { head: 'area', widthMm: 28, align: 'right' },
      { head: 'share', widthMm: 28, align: 'right' },
    ],
    rows: [...whole.metal.map(row('metal')), ...whole.paint.map(row('paint'))],
  })
}

function becauseLine(composer: Composer, step: Because): Span[] {
  const references = step.references.flatMap((reference): Span[] => {
    const number = Number(reference.key)
    switch (reference.kind) {
      case 'finding':
        return [{ text: ' ', style: styles.text }, composer.finding(number, styles.reference)]
      case 'exhibit':
        return [{ text: ' ', style: styles.text }, composer.exhibit(number, styles.soft)]
      case 'spot':
        return [
          { text: ' ', style: styles.text },
          composer.linked(numbered('R', number), styles.soft, place.spot(number)),
        ]
      default:
        return []
    }
  })
  return [
    { text: step.text, style: styles.text },
    ...references,
    { text: ` ${step.sort}${step.source === null ? '' : `; ${step.source}`}`, style: styles.sideNote },
  ]
}
