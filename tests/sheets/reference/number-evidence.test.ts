import { describe, expect, it } from 'vitest'
import { answerIdentity } from '../../../electron/analysis/identity/answer-identity.ts'
import { compileSheets } from '../../../electron/sheets/reference/compile-sheets.ts'
import { conflictViews } from '../../../electron/use-cases/identity-conflicts.ts'
import { identityEvidence, notedBy } from '../../../electron/use-cases/identity-evidence.ts'
import { numberViews, numberWords } from '../../../electron/use-cases/identity-number-words.ts'
import type { CarNumber } from '../../../shared-types/car.ts'
import { identityInput } from '../../../shared-types/identity-answer.ts'
import type { PartEntry } from '../../../shared-types/part.ts'
import { sheetFrom } from './small-sheets.ts'

const MISREAD = 0.02
const REPLACED = 0.1
const sheet = sheetFrom(`form: 1
sheetId: reed
title: Reed 1950
edition: "1"
variables:
  - id: works
    name: Works
    values: [{id: north, name: North}, {id: south, name: South}]
  - id: body
    name: Body
    values: [{id: open, name: open}, {id: closed, name: closed}, {id: van, name: van}]
  - id: built
    name: Built
    kind: dates
    basis: manufacture
    values:
      - {id: spring, name: Spring, from: 1950-03-01, to: 1950-05-31}
      - {id: summer, name: Summer, from: 1950-06-01, to: 1950-08-31}
      - {id: autumn, name: Autumn, from: 1950-09-01, to: 1950-11-30}
numbers:
  - id: chassis
    name: Chassis number
    misread: ${MISREAD}
    replaced: ${REPLACED}
    places:
      - kind: marks
        name: works
        rows: [{text: N, means: {works: [north]}}, {text: S, means: {works: [south]}}]
      - kind: sequence
        name: number
        minDigits: 2
        maxDigits: 3
        stretches:
          - {first: 1, last: 40, from: 1950-03-01, until: 1950-05-31}
          - {first: 41, last: 130, from: 1950-06-01, until: 1950-11-30}
  - id: tag
    name: Body tag
    places:
      - kind: marks
        name: body
        rows: [{text: O, means: {body: [open]}}, {text: C, means: {body: [closed]}}]
      - kind: sequence
        name: tag
        minDigits: 1
        maxDigits: 3
        stretches: [{first: 1, last: 99, means: {body: [closed]}, from: 1950-09-01}]
`)
const compiled = compileSheets([sheet])

const row = (
  number: number,
  kind: string,
  asRead: string,
  howRead: CarNumber['howRead'] = 'read character by character',
) => ({ number, kind, where: '', howRead, asRead, onPaper: '', paper: '', exhibits: [], note: '' }) satisfies CarNumber
const answered = (rows: readonly CarNumber[]) => {
  const noted = notedBy({ observations: [], carNumbers: rows }, compiled)
  const evidence = identityEvidence(noted, [], compiled)
  const answer = answerIdentity(identityInput.parse({ model: compiled.model, evidence, likeliest: ['reed/built'] }))
  const own = { key: '', sheets: [sheet], compiled, problem: null }
  return { noted, evidence, answer, ...conflictViews(own, answer, noted) }
}

/** Every chassis number that was given out, with what a car of some build may bear. */
const issued = ['N', 'S'].flatMap((mark) => Array.from({ length: 130 }, (_, at) => ({ mark, figures: at + 1 })))
const written = ({ mark, figures }: (typeof issued)[number]) => `${mark}${String(figures).padStart(2, '0')}`

/** Chance to read `asRead` on a car, by going through every number it may have left with or have got since. */
function chance(asRead: string, works: string, built: string): number {
  const reads = (number: string) =>
    number.length !== asRead.length
      ? 0
      : [...number].reduce(
          (product, letter, at) =>
            product * (asRead[at] === '?' ? 1 : asRead[at] === letter ? 1 - MISREAD : MISREAD / 35),
          1,
        )
  const mean = (some: typeof issued) => some.reduce((sum, number) => sum + reads(written(number)), 0) / some.length
  const own = issued.filter(
    ({ mark, figures }) => mark === (works === 'north' ? 'N' : 'S') && (built === 'spring') === figures <= 40,
  )
  return (1 - REPLACED) * mean(own) + REPLACED * mean(issued)
}

describe('a number as evidence', () => {
  // Bayes' theorem (T. Bayes, Phil. Trans. 53 (1763) 370-418) by going through all numbers ever given out, one by one.
  it.each(['N17', 'S 107', 'N?7', 'N1?', '?39', 'N???', 'X17', 'N4I', 'S40'])(
    'of %s is weighed as if all numbers were gone through',
    (asRead) => {
      const { answer } = answered([row(1, 'Chassis number', asRead)])
      const plain = asRead.replace(' ', '')
      const builds = ['north', 'south'].flatMap((works) =>
        ['spring', 'summer', 'autumn'].map((built) => ({ works, built, weight: chance(plain, works, built) })),
      )
      const all = builds.reduce((sum, { weight }) => sum + weight, 0)
      for (const [variable, values] of [
        ['works', ['north', 'south']],
        ['built', ['spring', 'summer', 'autumn']],
      ] as const)
        for (const value of values) {
          const wanted = builds
            .filter((build) => build[variable] === value)
            .reduce((sum, { weight }) => sum + weight, 0)
          expect(answer.posterior?.variables[`reed/${variable}`]?.[value], value).toBeCloseTo(wanted / all, 12)
        }
    },
  )

  it('says less the more of it cannot be read, and nothing when it is as long as none', () => {
    const spring = (asRead: string) =>
      answered([row(1, 'Chassis number', asRead)]).answer.posterior?.variables['reed/built']?.spring ?? 0
    expect(spring('N17')).toBeGreaterThan(spring('N?7'))
    expect(spring('N?7')).toBeGreaterThan(spring('N???'))
    expect(spring('N123456')).toBeCloseTo(1 / 3, 12)
    expect(spring('???')).toBeCloseTo(spring('N??'), 12)
  })

  it('counts once where plate and stamp agree, and twice where they differ', () => {
    const once = answered([row(1, 'Chassis number', 'N17')])
    const agreeing = answered([row(1, 'Chassis number', 'N17'), row(4, 'Chassis number', 'n 17')])
    expect(agreeing.evidence.observations).toHaveLength(1)
    expect(agreeing.answer.posterior).toEqual(once.answer.posterior)
    expect(
      answered([row(1, 'Chassis number', 'N17'), row(4, 'Chassis number', 'N107')]).evidence.observations,
    ).toHaveLength(2)
  })

  it('is told by its name, or by its form where only one number has it; paper and hearsay are no reading of the car', () => {
    expect(answered([row(1, 'Plate on the bulkhead', 'N17')]).noted.numbers).toHaveLength(1)
    expect(answered([row(1, 'Plate on the bulkhead', 'X17')]).noted.numbers).toEqual([])
    expect(answered([row(1, 'chassis number', 'X17')]).noted.numbers).toHaveLength(1)
    expect(answered([row(1, 'Plate on the bulkhead', '???')]).noted.numbers).toEqual([])
    for (const how of ['told', 'from paper', 'not found'] as const)
      expect(answered([row(1, 'Chassis number', 'N17', how)]).noted.numbers).toEqual([])
  })

  it('from a photograph says less than read on the car', () => {
    const on = (how: CarNumber['howRead']) =>
      answered([row(1, 'Chassis number', 'N17', how)]).answer.posterior?.variables['reed/built']?.spring ?? 0
    expect(on('from a photograph')).toBeLessThan(on('read character by character'))
    expect(on('from a photograph')).toBeGreaterThan(1 / 3)
  })

  it('has a place in the chain, in decibans', () => {
    const { answer } = answered([row(3, 'Chassis number', 'N17')])
    const [step] = answer.statements[0]?.contributions?.leaveOneOut ?? []
    const odds = (share: number) => share / (1 - share)
    const now = answer.posterior?.variables['reed/built']?.spring ?? 0
    expect(step).toMatchObject({ id: 'number reed/chassis N 3' })
    expect(step?.decibans).toBeCloseTo(10 * Math.log10(odds(now) / odds(1 / 3)), 9)
  })
})

describe('numbers that cannot be', () => {
  it('contradict each other as an argument of what each says, and name the ways out', () => {
    const { conflicts, repairs } = answered([row(1, 'Chassis number', 'N17'), row(2, 'Body tag', 'C5')])
    expect(conflicts.map(({ cannotAllBe }) => cannotAllBe.map(({ words }) => words))).toEqual([
      [
        'Chassis number N17 (N 1): number 1 to 40, given out 1 March 1950 to 31 May 1950',
        'Body tag C5 (N 2): tag 1 to 99, body closed, given out from 1 September 1950 on',
      ],
    ])
    expect(repairs).toHaveLength(2)
  })

  it('contradict themselves, place against place', () => {
    const { conflicts } = answered([row(2, 'Body tag', 'O5')])
    expect(conflicts[0]?.cannotAllBe.map(({ words }) => words)).toEqual([
      'Body tag O5 (N 2): body O, body open',
      'Body tag O5 (N 2): tag 1 to 99, body closed, given out from 1 September 1950 on',
    ])
  })

  it('are not of the form: said where they part from it, with what would mend it, and never as anybody’s doing', () => {
    const { conflicts, repairs, answer } = answered([row(1, 'Chassis number', 'N17'), row(5, 'Chassis number', 'N999')])
    expect(conflicts[0]?.cannotAllBe.map(({ words }) => words)).toEqual([
      'Chassis number N999 (N 5), read character by character',
      'Chassis number as written: 999 stands in place 2 where a number that was issued is wanted.',
    ])
    const words = JSON.stringify({ conflicts, repairs })
    expect(words).toMatch(/character 2 of it misread/)
    expect(words).not.toMatch(/forge|fake|tamper|fals/i)
    expect(answer.posterior).not.toBeNull()
  })
})

describe('a number read on a part', () => {
  const onPart = sheetFrom(`form: 1
sheetId: sedge
title: Sedge axles
edition: "1"
variables:
  - id: ratio
    name: Ratio
    values: [{id: low, name: low}, {id: high, name: high}]
numbers:
  - id: axle
    name: Axle number
    part: axle-housing
    misread: ${MISREAD}
    replaced: ${REPLACED}
    places:
      - kind: marks
        name: ratio
        rows: [{text: A, means: {ratio: [low]}}, {text: B, means: {ratio: [high]}}]
      - {kind: sequence, name: number, minDigits: 2, maxDigits: 3, stretches: []}
`)
  const axles = compileSheets([onPart])
  const part = (numberAsRead: string, learned: PartEntry['learned'] = 'seen'): PartEntry => ({
    partId: 'axle-housing',
    state: 'not determined',
    numberAsRead,
    dateAsRead: '',
    marks: '',
    expected: '',
    learned,
    exhibits: [],
    countsWith: null,
    fastening: null,
    note: '',
  })
  const answeredBy = (carNumbers: readonly CarNumber[], parts: readonly PartEntry[]) => {
    const noted = notedBy({ observations: [], carNumbers, parts }, axles)
    const evidence = identityEvidence(noted, [], axles)
    const answer = answerIdentity(identityInput.parse({ model: axles.model, evidence }))
    return { noted, evidence, low: answer.posterior?.variables['sedge/ratio']?.low }
  }

  it('tells of the car just as one in the list of numbers does', () => {
    const { noted, low } = answeredBy([], [part('A 117')])
    expect(low).toBeCloseTo(answeredBy([row(1, 'Axle number', 'A 117')], []).low ?? Number.NaN, 12)
    expect(low).toBeGreaterThan(0.9)
    expect(numberViews(noted, axles)).toMatchObject([{ rows: [], parts: ['axle-housing'], name: 'Axle number' }])
    expect(noted.numbers[0] && numberWords(noted.numbers[0])).toBe('Axle number A 117 (Back-axle casing)')
  })

  it('counts once where the list of numbers has it too, read alike or not', () => {
    const listed = answeredBy([row(1, 'Axle number', 'A 117')], [])
    for (const again of ['A117', 'B 117']) {
      const both = answeredBy([row(1, 'Axle number', 'A 117')], [part(again)])
      expect(both.evidence).toEqual(listed.evidence)
    }
  })

  it('says nothing where it was told, or stands on a part the sheet has no number for', () => {
    expect(answeredBy([], [part('A 117', 'told')]).evidence.observations).toEqual([])
    expect(answeredBy([], [{ ...part('A 117'), partId: 'transmission' }]).evidence.observations).toEqual([])
  })
})
