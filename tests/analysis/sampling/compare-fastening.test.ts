import { describe, expect, it } from 'vitest'
import { compareFastening } from '../../../electron/analysis/sampling/compare-fastening.ts'
import type { FasteningFound } from '../../../shared-types/fastening.ts'

const blank = { head: '', drive: '', thread: '', plating: '', mark: '' }
const bolt: FasteningFound = {
  expected: { ...blank, head: 'Hexagon', drive: 'slot', thread: 'BSF 5/16', plating: 'cadmium' },
  expectedBy: 'the right wing of this car',
  found: { ...blank, head: 'hexagon ', drive: 'cross recess', mark: '8.8' },
  witness: 'disturbed',
}
const standings = (found: FasteningFound) => compareFastening(found).parts.map(({ part, standing }) => [part, standing])

describe('a fastening against what is expected', () => {
  it('agrees, differs, was not seen or has nothing expected, part by part', () => {
    expect(standings(bolt)).toEqual([
      ['head', 'agrees'],
      ['drive', 'differs'],
      ['thread', 'not seen'],
      ['plating', 'not seen'],
      ['mark', 'nothing expected'],
    ])
    expect(compareFastening(bolt)).toMatchObject({ differs: 1 })
    expect(compareFastening(bolt).words).toBe(
      'Differs: drive cross recess, expected slot. Agrees: head. Not seen: thread, plating. Nothing expected: mark. Its witness marks are disturbed: it was undone, which says nothing of what it held. Expected by: the right wing of this car.',
    )
  })

  it('is never called fine for what nobody looked at, nor first for marks that are undisturbed', () => {
    const unseen = compareFastening({ ...bolt, found: blank, witness: 'not looked at' })
    expect(unseen.parts.every(({ standing }) => standing === 'not seen')).toBe(true)
    expect(unseen.words).not.toMatch(/agrees|fine|original/i)
    expect(compareFastening({ ...bolt, witness: 'undisturbed' }).words).not.toMatch(/original|first/i)
    expect(compareFastening({ ...bolt, witness: 'none to see' }).words).toMatch(/neither/)
  })
})
