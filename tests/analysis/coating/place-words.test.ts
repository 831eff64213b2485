import { describe, expect, it } from 'vitest'
import {
  placeLines,
  principleOf,
  substrateFlag,
  substrateLines,
} from '../../../electron/analysis/coating/place-words.ts'
import { edgeDistanceMm } from '../../../electron/figures/edge-distance.ts'
import { substrateTable } from '../../../electron/sheets/coating-lists.ts'
import { askedMeasures } from '../../../shared-types/coating-measures.ts'

const table = substrateTable()
const metric = askedMeasures({})

describe('what the gauge in hand reads over what lies below', () => {
  it('is told with its source, and by magnetic induction over aluminium that it cannot (ISO 2178:2016)', () => {
    const [line] = substrateLines(table, 'magnetic induction', 'magnetic', 'aluminium', metric)
    expect(line?.weight).toBe('cannot')
    expect(line?.words).toMatch(/^In magnetic mode over aluminium: .*nothing below is magnetic/)
    expect(line?.source).toMatch(/ISO 2178/)
  })
  it('says of lead what each mode of a dual gauge would show: filler in one, nothing in the other (physics of the methods)', () => {
    const lines = substrateLines(table, 'dual', 'magnetic', 'lead-loaded seam', metric)
    expect(lines.map(({ weight }) => weight)).toEqual(['care', 'plain'])
    expect(lines[0]?.words).toMatch(/body solder looks like filler/)
    expect(lines[1]?.words).toMatch(/^In the wrong mode, eddy-current: .*does not show/)
  })
  it('says that neither mode of a dual gauge reads glass fibre', () => {
    const [magnetic] = substrateLines(table, 'dual', 'magnetic', 'glass fibre', metric)
    const [eddy] = substrateLines(table, 'dual', 'eddy current', 'glass fibre', metric)
    expect([magnetic?.weight, eddy?.weight]).toEqual(['cannot', 'cannot'])
  })
  it('says of a mode the gauge does not have that the number says nothing', () => {
    expect(principleOf('eddy current', 'magnetic')).toBe('impossible')
    expect(substrateLines(table, 'eddy current', 'magnetic', 'steel', metric)[0]).toMatchObject({ weight: 'cannot' })
  })
  it('names both methods where neither gauge nor mode was noted', () => {
    expect(substrateLines(table, null, 'not noted', 'steel', metric)).toHaveLength(2)
  })
})

describe('readings over what a gauge cannot read', () => {
  const over = (substrate: 'glass fibre' | 'lead-loaded seam' | 'steel' | 'unknown') =>
    substrateFlag(table, 'magnetic induction', { mode: 'magnetic', substrate })
  it('are left out, those over lead are marked, and the others carry nothing', () => {
    expect(over('glass fibre')).toEqual({ reads: false, words: 'magnetic induction cannot read over glass fibre' })
    expect(over('lead-loaded seam')).toEqual({
      reads: true,
      words: 'over a lead-loaded seam: paint and lead together',
    })
    expect(over('steel')).toBeNull()
    expect(over('unknown')).toBeNull()
  })
})

describe('the place itself', () => {
  const square = 'M0 0L400 0L400 300L0 300Z'
  it('is measured from the outline, from inside and from outside', () => {
    expect(edgeDistanceMm(square, { u: 30, v: 150 })).toBeCloseTo(30, 9)
    expect(edgeDistanceMm(square, { u: 200, v: 292 })).toBeCloseTo(8, 9)
    expect(edgeDistanceMm(square, { u: -3, v: -4 })).toBeCloseTo(5, 9)
  })
  it('is warned of within one diameter of the probe, and where the panel turns away (common practice, no source)', () => {
    expect(placeLines(12, 30, 1, metric)).toEqual([])
    expect(placeLines(12, 8, 1, metric)[0]?.words).toMatch(/^Too near an edge: 8 mm .* Move in by 4 mm/)
    expect(placeLines(12, 30, 1.4, metric)[0]?.words).toMatch(/tighter than a radius of 240 mm/)
  })
  it('supposes a probe where none is noted, and says so', () => {
    expect(placeLines(null, 8, 1, metric)[0]?.words).toMatch(/10 mm supposed/)
    expect(placeLines(null, null, 1, metric)).toEqual([])
  })
})
