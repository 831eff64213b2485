import type { Problem } from '../../../../shared-types/problem.ts'
import type { TapeKind, TapeQuestion, TapeTaken } from '../../../../shared-types/tape-question.ts'
import type { ShownUnits } from '../../../../shared-types/units.ts'
import { EntryReader } from './entry-reader.ts'
import { NONE, stepFields, type TapeEntry, YES } from './tape-entry.ts'

/** Share of a normal distribution within two standard deviations, so that k is 2 where it is taken as normal. */
const COVERAGE = 0.9545
const GOOD_TO = 'what the tool is good to, each way'
const MOST_ON_A_LINE = 400

/** What an entry asks, or the first thing that is missing, or the first that cannot be read. */
export type TapeAsked = { readonly taken: TapeTaken } | { readonly missing: Problem } | { readonly refused: Problem }

type Build = (entry: TapeEntry, read: EntryReader) => TapeQuestion

const builds: { readonly [K in TapeKind]: Build } = {
  'stud circle': (entry, read) => {
    const studs = read.number('studs', 'the number of studs, 3 to 20')
    const steps = stepFields(entry.studs)
    if (entry.studs.trim() !== '' && steps.length === 0)
      read.refuse('studs', 'Count the studs: a whole number from 3 to 20.')
    const spacings = steps.flatMap((name, at) => read.maybeLengths(name).map((mm) => ({ mm, step: at + 1 })))
    if (spacings.length === 0) read.lengths('step1', 'a spacing between two studs')
    return {
      kind: 'stud circle',
      studs,
      spacings,
      goodToMm: read.positiveLength('goodTo', GOOD_TO),
      coverage: COVERAGE,
    }
  },
  'drum or disc': (_, read) => ({
    kind: 'drum or disc',
    readingsMm: read.lengths('readings', 'the diameter, or the thickness of a disc'),
    goodToMm: read.positiveLength('goodTo', GOOD_TO),
    sizes: read.rows('sizes', 'nominal size and wear limit', 1).map((row) => {
      const { name, mm } = read.namedLengths('sizes', row, 2, 'nominal and limit, such as 228.6 230.1')
      const [nominalMm = 0, limitMm = 0] = mm
      if (!(nominalMm > 0 && limitMm > 0)) read.refuse('sizes', 'Nominal size and limit must be greater than nothing.')
      return { label: name === '' ? row.replace(/\s+/, ' to ') : name, nominalMm, limitMm }
    }),
    coverage: COVERAGE,
  }),
  gaps: (entry, read) => {
    const places = read.maybeLengths('places')
    const side = (values: readonly number[]) => values.map((gapMm, at) => ({ atMm: places[at] ?? at, gapMm }))
    const left = read.lengths('left', 'the gaps at three places or more', 3)
    const right = read.maybeLengths('right')
    if (right.length > 0 && right.length < 3)
      read.refuse('right', 'Enter three gaps or more of the other side too, or none.')
    const most = Math.max(left.length, right.length)
    if (places.length > 0 && places.length < most)
      read.refuse('places', `Enter ${most} places, one for each gap, or none.`)
    return {
      kind: 'gaps',
      of: entry.of === 'flush' ? 'flush' : 'gap',
      jointId: entry.jointId === NONE ? null : entry.jointId,
      placesMeasured: places.length > 0,
      left: side(left),
      right: right.length === 0 ? null : side(right),
      goodToMm: read.positiveLength('goodTo', GOOD_TO),
      coverage: COVERAGE,
    }
  },
  diagonals: (entry, read) => ({
    kind: 'diagonals',
    firstMm: read.length('first', 'one diagonal'),
    secondMm: read.length('second', 'the other diagonal'),
    widthMm: read.length('width', 'the width'),
    lengthMm: read.length('length', 'the length'),
    goodToMm: read.positiveLength('goodTo', GOOD_TO),
    limitMm: entry.limit.trim() === '' ? null : read.positiveLength('limit', 'the greatest difference allowed'),
    coverage: COVERAGE,
  }),
  trilateration: (_, read) => ({
    kind: 'trilateration',
    from: read.rows('points', 'three known points or more, one in a row', 3).map((row, at) => {
      const { name, mm } = read.namedLengths('points', row, 3, 'a name, x, y and the distance, such as A 0 0 512')
      const [xMm = 0, yMm = 0, distanceMm = 0] = mm
      return { label: name === '' ? `point ${at + 1}` : name, xMm, yMm, distanceMm }
    }),
    uMm: read.positiveLength('goodTo', GOOD_TO) / Math.sqrt(3),
    coverage: COVERAGE,
  }),
  'sheet thickness': (entry, read) => ({
    kind: 'sheet thickness',
    travelTimeUs: read.number('travelTime', 'the travel time there and back, µs'),
    uTimeUs: read.amount('uTime', 'the standard uncertainty of the time, µs'),
    velocityMetalMs: Math.max(read.amount('velocity', 'the speed of sound in the metal, m/s'), 1),
    uVelocityMetalMs: read.amount('uVelocity', 'the standard uncertainty of that speed, m/s'),
    echoToEcho: entry.echoToEcho === YES,
    paintUm: read.coating('paint', `the thickness of the paint, ${read.coatingUnit}, or 0`),
    uPaintUm: read.coating('uPaint', `the standard uncertainty of the paint, ${read.coatingUnit}, or 0`),
    velocityPaintMs: 2500,
    nominalMm: entry.nominal.trim() === '' ? null : read.positiveLength('nominal', 'the nominal thickness'),
    coverage: COVERAGE,
  }),
  'weld pitch': (_, read) => {
    const pitchesMm = read.lengths('readings', 'three pitches or more', 3)
    const lowMm = read.maybeLength('low')
    const highMm = read.maybeLength('high')
    if ((lowMm === null) !== (highMm === null)) read.refuse('high', 'Enter both ends of what is expected, or neither.')
    if (lowMm !== null && !(lowMm > 0)) read.refuse('low', 'It must be greater than nothing.')
    return {
      kind: 'weld pitch',
      pitchesMm,
      goodToMm: read.positiveLength('goodTo', GOOD_TO),
      expected: lowMm === null || highMm === null ? null : { lowMm, highMm },
      coverage: COVERAGE,
    }
  },
  repeated: (_, read) => ({
    kind: 'repeated',
    readingsMm: read.lengths('readings', 'the readings'),
    goodToMm: read.positiveLength('goodTo', GOOD_TO),
    lowerMm: read.maybeLength('low'),
    upperMm: read.maybeLength('high'),
    coverage: COVERAGE,
  }),
}

/** Turns what is typed into what is asked. What is missing counts before what the program would refuse, not before what cannot be read. */
export function tapeAsked(kind: TapeKind, entry: TapeEntry, units: ShownUnits): TapeAsked {
  const read = new EntryReader(entry, units)
  const question = builds[kind](entry, read)
  if (read.refused !== null) return { refused: read.refused }
  if (read.missing !== null) return { missing: read.missing }
  const tell = entry.tell === NONE ? null : entry.tell
  return { taken: { question, tell, where: entry.where.trim().slice(0, MOST_ON_A_LINE) } }
}
