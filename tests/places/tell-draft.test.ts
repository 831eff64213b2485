import { describe, expect, it } from 'vitest'
import { draftOf, observationOf, type TellDraft, valueKey } from '../../renderer/places/identity/tell-draft.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { observation } from '../../shared-types/observation.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'

const tell = { key: 'sedge/stud-circle', unit: 'mm' }
const untouched = draftOf({ observation: null })
const said = (part: Partial<TellDraft>): Observation =>
  observation.parse(observationOf(tell, { ...untouched, ...part }))
const refused = (part: Partial<TellDraft>): string | undefined => {
  try {
    said(part)
  } catch (fault) {
    if (fault instanceof ProblemError) return fault.problem.field
    throw fault
  }
  throw new Error('It was not refused.')
}

describe('what is said of a tell', () => {
  it('is seen when certain, and believed with its share when not', () => {
    expect(said({ state: 'seen', value: 'c98' })).toMatchObject({ state: 'seen', value: 'c98', surePercent: null })
    expect(said({ state: 'seen', value: 'c98', surePercent: 80, note: 'by torch', exhibits: [3] })).toMatchObject({
      state: 'believed',
      value: 'c98',
      surePercent: 80,
      note: 'by torch',
      exhibits: [3],
    })
  })

  it('keeps a standard uncertainty, and half of an expanded one with k = 2 (JCGM 100:2008, 6.2.1)', () => {
    const measured = { state: 'measured', measured: 101.6, uncertainty: 0.2 } as const
    expect(said({ ...measured, statedAs: 'expanded, k = 2' }).measured?.standardUncertainty).toBe(0.1)
    expect(said({ ...measured, statedAs: 'standard, k = 1' }).measured?.standardUncertainty).toBe(0.2)
  })

  it('stays with the measurement it was taken from until a figure is changed or the exhibit is no longer cited', () => {
    const measured = { value: 101.6, standardUncertainty: 0.1, from: 4 }
    const kept = {
      tell: tell.key,
      state: 'measured',
      value: null,
      surePercent: null,
      measured,
      exhibits: [4],
      note: '',
    }
    const draft = draftOf({ observation: observation.parse(kept) })
    expect(said({ ...draft, note: 'left front hub' }).measured).toEqual(measured)
    const own = { value: 101.7, standardUncertainty: 0.1 }
    expect(said({ ...draft, measured: 101.7 }).measured).toEqual(own)
    expect(said({ ...draft, exhibits: [] }).measured).toEqual({ ...own, value: 101.6 })
  })

  it('comes back as it was kept', () => {
    const kept = [
      said({ state: 'measured', measured: 101.6, uncertainty: 0.3, statedAs: 'standard, k = 1' }),
      said({ state: 'seen', value: 'c98', surePercent: 65 }),
      said({ state: 'cannot be seen', note: 'Wheel not off.' }),
      said({ state: 'disturbed' }),
    ]
    for (const row of kept) expect(observationOf(tell, draftOf({ observation: row }))).toEqual(row)
  })

  it('wants an answer, a value and an uncertainty where they belong, and the reason why a tell cannot be seen', () => {
    expect(refused({})).toBe('value')
    expect(refused({ state: 'seen' })).toBe('value')
    expect(refused({ state: 'measured', uncertainty: 1 })).toBe('measured')
    expect(refused({ state: 'measured', measured: 98, uncertainty: 0 })).toBe('uncertainty')
    expect(refused({ state: 'cannot be seen', note: ' ' })).toBe('note')
  })

  it('drops a value once the tell cannot be seen after all', () => {
    expect(said({ state: 'disturbed', value: 'c98', surePercent: 70 })).toMatchObject({
      value: null,
      surePercent: null,
    })
  })
})

describe('letters of the answers', () => {
  it('are twenty, none of them a key of the tell itself', () => {
    const letters = Array.from({ length: 24 }, (_, at) => valueKey(at))
    expect(letters.slice(0, 4)).toEqual(['A', 'B', 'C', 'D'])
    expect(new Set(letters.slice(0, 20)).size).toBe(20)
    for (const taken of ['S', 'M', 'E', 'T', 'X', 'Y']) expect(letters).not.toContain(taken)
    expect(letters.slice(20)).toEqual(['', '', '', ''])
  })
})
