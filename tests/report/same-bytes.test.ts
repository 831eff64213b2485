import { afterEach, expect, test } from 'vitest'
import { composed } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

const zone = process.env.TZ
afterEach(() => {
  if (zone === undefined) delete process.env.TZ
  else process.env.TZ = zone
})

test('the same record and clock give the same bytes, in any time zone', async () => {
  const first = await composed(contentFixture(recordFixture()))
  process.env.TZ = 'Pacific/Kiritimati'
  const second = await composed(contentFixture(recordFixture()))
  expect(second.sha256).toBe(first.sha256)
  expect(second.bytes.equals(first.bytes)).toBe(true)
  process.env.TZ = 'America/St_Johns'
  expect((await composed(contentFixture(recordFixture()))).sha256).toBe(first.sha256)
})

test('another clock or another record gives other bytes and another identifier', async () => {
  const content = contentFixture(recordFixture())
  const identifier = (bytes: Buffer) => /\/ID \[ (<[0-9a-f]{32}>)/.exec(bytes.toString('latin1'))?.[1]
  const first = await composed(content)
  const later = await composed({ ...content, edition: { ...content.edition, issuedAt: '2026-11-18T12:00:00.000Z' } })
  expect(identifier(first.bytes)).toBeDefined()
  expect(identifier(later.bytes)).not.toBe(identifier(first.bytes))
})
