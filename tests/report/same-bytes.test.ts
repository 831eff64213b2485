import { afterEach, expect, test } from 'vitest'
import { composed } from './composing.ts'
import { contentFixture, exhibitFixture, recordFixture } from './content-fixture.ts'

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

test('pictures that are long in coming, and come in another order, give the same bytes', async () => {
  const exhibits = Array.from({ length: 20 }, (_, index) => exhibitFixture(index + 1))
  const content = contentFixture(recordFixture({ exhibits }))
  const late = async (number: number) => {
    const bytes = await content.picture(number)
    await new Promise((resolve) => setTimeout(resolve, (number * 7) % 20))
    return bytes
  }
  expect((await composed({ ...content, picture: late })).sha256).toBe((await composed(content)).sha256)
})

test('a picture that cannot be read is told, whatever came before it', async () => {
  const exhibits = [1, 2, 3].map((number) => exhibitFixture(number))
  const content = contentFixture(recordFixture({ exhibits }))
  const failing = (number: number) =>
    number === 3 ? Promise.reject(new Error('gone from the disk')) : content.picture(number)
  await expect(composed({ ...content, picture: failing })).rejects.toThrow('gone from the disk')
})

test('another clock or another record gives other bytes and another identifier', async () => {
  const content = contentFixture(recordFixture())
  const identifier = (bytes: Buffer) => /\/ID \[ (<[0-9a-f]{32}>)/.exec(bytes.toString('latin1'))?.[1]
  const first = await composed(content)
  const later = await composed({ ...content, edition: { ...content.edition, issuedAt: '2026-11-18T12:00:00.000Z' } })
  expect(identifier(first.bytes)).toBeDefined()
  expect(identifier(later.bytes)).not.toBe(identifier(first.bytes))
})
