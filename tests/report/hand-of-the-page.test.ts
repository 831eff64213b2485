import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const top = join(import.meta.dirname, '..', '..', 'electron', 'report')
const folders = ['sections', 'drawing', 'layout', 'wording']
const sources = folders.flatMap((folder) =>
  readdirSync(join(top, folder))
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({ name: `${folder}/${name}`, text: readFileSync(join(top, folder, name), 'utf8') })),
)

/** Colours written out, by figures or by name, where an ink of the tokens belongs. */
const colours = (text: string): string[] => [
  ...(text.match(/#(?:[0-9a-f]{6}|[0-9a-f]{3})\b/gi) ?? []),
  ...(text.match(/\b(?:rgb|hsl)a?\(/g) ?? []),
  ...(text.match(/colour: '[^']*'/g) ?? []),
]
/** Weights of lines and sizes of type written out; nothing at all is no weight. */
const weights = (text: string): string[] => text.match(/(?:weightMm|sizePt): *(?:0\.0*[1-9]|[1-9])[\d.]*/g) ?? []

test('no part of the report holds a colour of its own', () => {
  expect(sources.length).toBeGreaterThan(40)
  expect(sources.flatMap(({ name, text }) => colours(text).map((found) => `${name}: ${found}`))).toEqual([])
})

test('weights of lines and sizes of type in sections and drawings are those of the tokens', () => {
  const own = sources.filter(({ name }) => /^(?:sections|drawing)\/|^layout\/(?:table|text-style)/.test(name))
  expect(own.flatMap(({ name, text }) => weights(text).map((found) => `${name}: ${found}`))).toEqual([])
})

test('a colour, a weight and a size written out are seen', () => {
  expect(colours("{ colour: '#16191D' }")).not.toEqual([])
  expect(colours("fill('#fff') rgb(0, 0, 0)")).toEqual(['#fff', 'rgb('])
  expect(colours("this.#field = number('#1')")).toEqual([])
  expect(weights('{ weightMm: 0.12, sizePt: 9 }')).toEqual(['weightMm: 0.12', 'sizePt: 9'])
  expect(weights('{ weightMm: 0 }')).toEqual([])
})
