import { describe, expect, it } from 'vitest'
import { oddsFactor, reliabilityWords, saysWords } from '../../renderer/places/identity/claim-words.ts'
import type { SheetTerms } from '../../shared-types/sheet-terms.ts'

const days = ['March', 'April', 'May', 'June'].map((name) => ({ id: name.toLowerCase(), name }))
const terms: readonly SheetTerms[] = [
  {
    sheetId: 'sedge',
    title: 'Sedge',
    numbers: [],
    variables: [
      { variable: 'built', name: 'Built', about: 'as built', kind: 'dates', values: days, groups: [] },
      {
        variable: 'series',
        name: 'Series',
        about: 'as built',
        kind: 'choice',
        values: [
          { id: 'sedge', name: 'Sedge' },
          { id: 'marl', name: 'Sedge Marl' },
          { id: 'lantern', name: 'Sedge Lantern' },
        ],
        groups: [],
      },
    ],
  },
]
const says = (variable: string, ...values: string[]) => ({ sheetId: 'sedge', variable, values })

describe('what a claim says in the terms of a sheet', () => {
  it('is named as the sheet names it, several values joined by “or”', () => {
    expect(saysWords([says('series', 'lantern')], terms)).toBe('Series: Sedge Lantern')
    expect(saysWords([says('series', 'lantern', 'marl')], terms)).toBe('Series: Sedge Marl or Sedge Lantern')
  })

  it('is a stretch where days are neighbours, and a list where they are not', () => {
    expect(saysWords([says('built', 'may', 'april', 'march')], terms)).toBe('Built: March to May')
    expect(saysWords([says('built', 'march', 'june')], terms)).toBe('Built: March or June')
    expect(saysWords([says('built', 'march')], terms)).toBe('Built: March')
  })

  it('stays readable when the sheet was left out of the record, and is nothing where nothing was said', () => {
    expect(saysWords([says('series', 'lantern')], [])).toBe('sedge/series: lantern')
    expect(saysWords([], terms)).toBe('')
  })
})

describe('what a reliability does', () => {
  const claim = { reliability: 80, repeats: null, asserts: [says('series', 'lantern')] }

  it('is a likelihood ratio: 80 of 100 is 4 to 1, 6.0 decibans (10 log10 4 = 6.02)', () => {
    expect(oddsFactor(80)).toBeCloseTo(4, 12)
    expect(reliabilityWords(claim)).toContain('rise 4 times, 6.0 decibans')
    expect(reliabilityWords({ ...claim, reliability: 20 })).toContain('fall 4 times, 6.0 decibans')
  })

  it('is nothing where half of such statements hold, where it repeats another, and where nothing is said', () => {
    expect(reliabilityWords({ ...claim, reliability: 50 })).toContain('moves nothing')
    expect(reliabilityWords({ ...claim, repeats: 2 })).toContain('no second witness')
    expect(reliabilityWords({ ...claim, asserts: [] })).toContain('moves nothing')
    expect(reliabilityWords({ ...claim, reliability: null })).toContain('no evidence itself')
  })
})
