import { beforeAll, describe, expect, it } from 'vitest'
import { numberFormatOf } from '../../electron/use-cases/number-format.ts'
import { composed, has, textOf } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

describe.skipIf(!has('pdftotext'))('numbers of 17 characters in the report', () => {
  let text: string
  beforeAll(async () => {
    const plain = recordFixture()
    const [first] = plain.carNumbers
    if (first === undefined) throw new Error('The record of the test has no number.')
    const record = {
      ...plain,
      particulars: { ...plain.particulars, builtFrom: '2004-06-01', builtTo: null, marketOfFirstSale: 'Canada' },
      // 49 CFR 565.15(c), table VI: the example of the rule, with another check digit.
      carNumbers: [{ ...first, number: 1, asRead: '1G4AH59H55G118341', onPaper: '' }],
    }
    const content = contentFixture(record, { numberFormat: numberFormatOf(record) })
    text = textOf((await composed(content)).path).replace(/\s+/g, ' ')
  })

  it('stand with each check, how it came out and why, and whether the format concerns the car', () => {
    expect(text).toContain('concerns a car built from 1 June 2004 on.')
    expect(text).toContain('N 1, as read: 1G4AH59H55G118341. Model year 2005 by position 10; maker’s code 1G4.')
    expect(text).toMatch(/check digit fails Sum of products 411/)
    expect(text).toMatch(/serial figures passes/)
    expect(text).not.toMatch(/forge/i)
  })
})
