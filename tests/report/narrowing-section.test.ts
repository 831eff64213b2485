import { beforeAll, describe, expect, it } from 'vitest'
import type { RecordView } from '../../shared-types/record.ts'
import { composed, has, textOf } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

describe.skipIf(!has('pdftotext'))('the report', () => {
  let text: string
  const plain = recordFixture()
  const [first] = plain.exhibits
  const record: RecordView = {
    ...plain,
    observations: [
      {
        tell: 'sedge/stud-circle',
        state: 'cannot be seen',
        value: null,
        surePercent: null,
        measured: null,
        exhibits: first === undefined ? [] : [first.number],
        note: 'wheel not off',
      },
    ],
  }
  beforeAll(async () => {
    text = textOf((await composed(contentFixture(record))).path)
  })

  it('lists what to look at by how much it would narrow each range, with the weights and their basis', () => {
    expect(text).toMatch(/Right front wing\s+not looked at yet\s+9\.0/)
    expect(text).toMatch(/Weights: a panel by its area, a part by one\./)
  })

  it('names the tell among what cites an exhibit', () => {
    expect(text.replace(/\s+/g, ' ')).toMatch(/tell “sedge\/stud-/)
  })
})
