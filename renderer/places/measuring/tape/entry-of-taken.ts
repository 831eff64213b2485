import type { Exhibit } from '../../../../shared-types/exhibit.ts'
import { exactMetric, shownUnit } from '../../../../shared-types/shown-measure.ts'
import type { TapeKind, TapeQuestion, TapeQuestionOf, TapeTaken } from '../../../../shared-types/tape-question.ts'
import type { ShownUnits } from '../../../../shared-types/units.ts'
import { choiceOf } from '../measured-panel.ts'
import { NONE, newEntry, stepFields, type TapeEntry, YES } from './tape-entry.ts'

type Typed = Partial<TapeEntry>
type Length = (mm: number | null) => string
type Coating = (um: number) => string
type Read<K extends TapeKind> = (question: TapeQuestionOf<K>, length: Length, coating: Coating) => Typed

/** Figures without the dust of a unit changed twice. */
const plain = (value: number): string => String(Number(value.toFixed(6)))

/** Decimals of an inch that bring every kept millimetre back. */
const MOST_DECIMALS = 9

/** A kept value in a unit of which one is `per`, with no more figures than bring it back just as it was kept. */
function asTyped(value: number, per: number): string {
  if (per === 1) return plain(value)
  for (let decimals = 0; decimals < MOST_DECIMALS; decimals += 1) {
    const typed = Number((value / per).toFixed(decimals))
    if (exactMetric(typed * per) === exactMetric(value)) return String(typed)
  }
  return String(Number((value / per).toFixed(MOST_DECIMALS)))
}

/** A name made of the row itself is made of it again. */
const ownName = (label: string): string => (/^[\d.,/-]+ to [\d.,/ -]+/.test(label) ? '' : label)

const reads: { readonly [K in TapeKind]: Read<K> } = {
  'stud circle': ({ studs, spacings, goodToMm }, length) => ({
    studs: String(studs),
    goodTo: length(goodToMm),
    ...Object.fromEntries(
      stepFields(String(studs)).map((name, at) => [
        name,
        spacings.flatMap(({ mm, step }) => (step === at + 1 ? [length(mm)] : [])).join(' '),
      ]),
    ),
  }),
  'drum or disc': ({ readingsMm, goodToMm, sizes }, length) => ({
    readings: readingsMm.map(length).join(' '),
    goodTo: length(goodToMm),
    sizes: sizes
      .map(({ label, nominalMm, limitMm }) => `${ownName(label)} ${length(nominalMm)} ${length(limitMm)}`.trim())
      .join('\n'),
  }),
  gaps: ({ of, jointId, placesMeasured, left, right, goodToMm }, length) => {
    const longer = right !== null && right.length > left.length ? right : left
    return {
      of,
      jointId: jointId ?? NONE,
      left: left.map(({ gapMm }) => length(gapMm)).join(' '),
      right: (right ?? []).map(({ gapMm }) => length(gapMm)).join(' '),
      places: placesMeasured ? longer.map(({ atMm }) => length(atMm)).join(' ') : '',
      goodTo: length(goodToMm),
    }
  },
  diagonals: ({ firstMm, secondMm, widthMm, lengthMm, goodToMm, limitMm }, length) => ({
    first: length(firstMm),
    second: length(secondMm),
    width: length(widthMm),
    length: length(lengthMm),
    limit: length(limitMm),
    goodTo: length(goodToMm),
  }),
  trilateration: ({ from, uMm }, length) => ({
    points: from
      .map(({ label, xMm, yMm, distanceMm }) => [label, length(xMm), length(yMm), length(distanceMm)].join(' '))
      .join('\n'),
    // Kept as a standard uncertainty; half-width of a rectangular distribution (JCGM 100:2008, 4.3.7).
    goodTo: length(uMm * Math.sqrt(3)),
  }),
  'sheet thickness': (question, length, coating) => ({
    travelTime: plain(question.travelTimeUs),
    uTime: plain(question.uTimeUs),
    velocity: plain(question.velocityMetalMs),
    uVelocity: plain(question.uVelocityMetalMs),
    echoToEcho: question.echoToEcho ? YES : '',
    paint: coating(question.paintUm),
    uPaint: coating(question.uPaintUm),
    nominal: length(question.nominalMm),
  }),
  'weld pitch': ({ pitchesMm, goodToMm, expected }, length) => ({
    readings: pitchesMm.map(length).join(' '),
    goodTo: length(goodToMm),
    low: length(expected?.lowMm ?? null),
    high: length(expected?.highMm ?? null),
  }),
  repeated: ({ readingsMm, goodToMm, lowerMm, upperMm }, length) => ({
    readings: readingsMm.map(length).join(' '),
    goodTo: length(goodToMm),
    low: length(lowerMm),
    high: length(upperMm),
  }),
}

function readOf<K extends TapeKind>(kind: K, question: TapeQuestion, length: Length, coating: Coating): Typed {
  return reads[kind](question as TapeQuestionOf<K>, length, coating)
}

/** Readings that were kept, as they would be typed again in those units. */
export function entryOfTaken({ question, tell, where }: TapeTaken, units: ShownUnits): TapeEntry {
  const inUnit = (value: number, kept: string) => asTyped(value, shownUnit(kept, units).per)
  const length: Length = (mm) => (mm === null ? '' : inUnit(mm, 'mm'))
  const read = readOf(question.kind, question, length, (um) => inUnit(um, 'µm'))
  return { ...newEntry(question.kind, ''), ...read, tell: tell ?? NONE, where }
}

/** A measurement opened again, with everything that was read. A caption the program wrote is written anew. */
export function entryOfKept(
  { measurement, caption, madeBy, panelId }: Exhibit,
  taken: TapeTaken,
  captionIsOwn: boolean,
  units: ShownUnits,
): TapeEntry {
  const what = measurement?.what ?? ''
  const at = `, ${taken.where}`
  return {
    ...entryOfTaken(taken, units),
    what: taken.where !== '' && what.endsWith(at) ? what.slice(0, -at.length) : what,
    instrument: measurement?.instrument ?? '',
    panelId: choiceOf(panelId),
    madeBy,
    caption: captionIsOwn ? '' : caption,
  }
}
