import type { TapeKind } from '../../../../shared-types/tape-question.ts'
import { wholeCar } from '../measured-panel.ts'

/** What is typed for one measurement, field by field, as text; fields a kind does not ask for stay empty. */
export type TapeEntry = Readonly<Record<TapeFieldName, string>>

const stepNames = ['step1', 'step2', 'step3', 'step4', 'step5', 'step6', 'step7', 'step8', 'step9', 'step10'] as const
const fieldNames = [
  ...stepNames,
  'studs',
  'readings',
  'sizes',
  'of',
  'jointId',
  'left',
  'right',
  'places',
  'first',
  'second',
  'width',
  'length',
  'limit',
  'points',
  'travelTime',
  'uTime',
  'velocity',
  'uVelocity',
  'echoToEcho',
  'paint',
  'uPaint',
  'nominal',
  'low',
  'high',
  'goodTo',
  'what',
  'where',
  'instrument',
  'panelId',
  'tell',
  'noteTell',
  'madeBy',
  'caption',
] as const
export type TapeFieldName = (typeof fieldNames)[number]

/** Choice that stands for none. */
export const NONE = 'none'
/** How a thing that is so stands in an entry. */
export const YES = 'yes'

const MOST_STUDS = 20

/** Names of the fields of stud spacings, neighbours first, as far as that many studs go. */
export function stepFields(studs: string): readonly (typeof stepNames)[number][] {
  const count = Number(studs)
  return Number.isInteger(count) && count >= 3 && count <= MOST_STUDS ? stepNames.slice(0, Math.floor(count / 2)) : []
}

/** How a kind is called, its key in the place, and what it measures unless said otherwise. */
export interface TapeKindWords {
  readonly kind: TapeKind
  readonly keys: string
  readonly title: string
  readonly over: string
  readonly what: string
}

export const tapeKinds: readonly TapeKindWords[] = [
  { kind: 'stud circle', keys: 'S', title: 'Stud circle', over: 'from spacings between studs', what: 'Stud circle' },
  {
    kind: 'drum or disc',
    keys: 'D',
    title: 'Drum or disc',
    over: 'diameter or thickness against wear',
    what: 'Drum diameter',
  },
  { kind: 'gaps', keys: 'G', title: 'Gaps and flush', over: 'of one joint, at three places or more', what: 'Gap' },
  { kind: 'diagonals', keys: 'X', title: 'Diagonals', over: 'of a four-sided opening or frame', what: 'Diagonals' },
  {
    kind: 'trilateration',
    keys: 'L',
    title: 'A point from distances',
    over: 'to three known points or more',
    what: 'Place of a point',
  },
  {
    kind: 'sheet thickness',
    keys: 'U',
    title: 'Sheet by ultrasound',
    over: 'thickness from the time of an echo',
    what: 'Sheet thickness',
  },
  {
    kind: 'weld pitch',
    keys: 'W',
    title: 'Pitch of welds',
    over: 'spot welds along one seam',
    what: 'Pitch of spot welds',
  },
  { kind: 'repeated', keys: 'R', title: 'Repeated readings', over: 'one length, read again and again', what: '' },
]

export const wordsOfKind = (kind: TapeKind): TapeKindWords => {
  const found = tapeKinds.find((words) => words.kind === kind)
  if (found === undefined) throw new RangeError(`No words for ${kind}.`)
  return found
}

/** Name under which what is typed is remembered; a kept measurement opened again has its own. */
export const entryName = (kind: TapeKind, exhibit: number | null): string =>
  exhibit === null ? `tape.${kind}` : `exhibit.remeasure ${exhibit}`

const empty = Object.fromEntries(fieldNames.map((name) => [name, ''])) as TapeEntry

/** An entry with nothing read yet. Speed of sound in steel sheet and its spread: recalled, to be replaced by a check on bare metal. */
export function newEntry(kind: TapeKind, madeBy: string): TapeEntry {
  return {
    ...empty,
    what: wordsOfKind(kind).what,
    panelId: wholeCar,
    jointId: NONE,
    tell: NONE,
    of: 'gap',
    studs: kind === 'stud circle' ? '4' : '',
    ...(kind === 'sheet thickness'
      ? { velocity: '5920', uVelocity: '60', paint: '0', uPaint: '0', echoToEcho: '' }
      : {}),
    madeBy,
  }
}
