import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { z } from 'zod'
import { resourcePath } from '../../electron/places-on-disk.ts'
import { composed, has, printed } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

const checklist = z
  .object({
    items: z.array(
      z.object({
        id: z.string(),
        level: z.string(),
        must: z.string(),
        printed: z.array(z.string()).min(1).optional(),
        leftOut: z.string().min(1).optional(),
      }),
    ),
  })
  .parse(JSON.parse(readFileSync(resourcePath('report', 'checklist.json'), 'utf8')))

test('every line of the checklist is either printed or left out with a reason, never both', () => {
  expect(checklist.items).toHaveLength(60)
  for (const { id, printed: words, leftOut } of checklist.items) {
    expect((words === undefined) !== (leftOut === undefined), id).toBe(true)
  }
})

test('no unconditional must is left out', () => {
  expect(checklist.items.filter(({ level, leftOut }) => level === 'must' && leftOut !== undefined)).toEqual([])
})

test.runIf(has('pdftotext'))('the wording of every line stands in the text of a report', async () => {
  const { path } = await composed(contentFixture(recordFixture()))
  const plain = (text: string) => text.replace(/[\s\u00A0\u2009\u202F]+/g, ' ')
  const text = plain(printed('pdftotext', path, '-'))
  for (const { id, must, printed: words = [] } of checklist.items) {
    for (const alternatives of words) {
      const found = alternatives.split('|').some((wording) => text.includes(plain(wording)))
      expect(found, `${id} (${must}): “${alternatives}”`).toBe(true)
    }
  }
})
