import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { describe, expect, test, vi } from 'vitest'
import {
  type FaceName,
  faceFiles,
  type ShapedText,
  Typeface,
  typeface,
} from '../../electron/report/document/typeface.ts'
import { composed } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

const faces = Object.keys(faceFiles) as FaceName[]
const range = (first: number, last: number) =>
  Array.from({ length: last - first + 1 }, (_, index) => String.fromCharCode(first + index))
const latin = [...range(0x20, 0x7e), ...range(0xa0, 0xac), ...range(0xae, 0x24f)]
const signs = [
  [0x2000, 0x200a],
  [0x2010, 0x2027],
  [0x202f, 0x2043],
  [0x2070, 0x20bf],
  [0x2100, 0x27bf],
].flatMap(([first = 0, last = 0]) => range(first, last))
const covered = (name: FaceName, characters: readonly string[]) =>
  characters.filter((character) => typeface(name).covers(character.charCodeAt(0)))

const places = ({ glyphs, width }: ShapedText) => ({ width, glyphs: glyphs.map(({ text: _, ...place }) => place) })

/** Compares with the whole shaping engine, which reads the same file with code that is not ours. */
function expectAsByEngine(name: FaceName, text: string): void {
  const face = typeface(name)
  const shaped = face.shape(text)
  const [own, theirs] = [places(shaped), places(face.shapedByEngine(text))]
  // Many thousand glyphs are compared; only a difference is worth the wording of it.
  if (!isDeepStrictEqual(own, theirs)) expect(own, `${name}: ${text}`).toEqual(theirs)
  if (shaped.glyphs.map((glyph) => glyph.text).join('') !== text) expect.fail(`${name}: ${text} lost letters`)
}

/** Every string of the lists, fixed texts and the demonstration car. */
function* stringsIn(value: unknown): Generator<string> {
  if (typeof value === 'string') yield value
  else if (value !== null && typeof value === 'object') for (const own of Object.values(value)) yield* stringsIn(own)
}

describe('plain Latin text is shaped as the whole engine shapes it', () => {
  test.each(faces)('in %s: every pair of letters, and every sign beside letters', (name) => {
    const letters = covered(name, [
      ...range(0x20, 0x7e),
      ...range(0xa0, 0xac),
      ...range(0xae, 0xff),
      'Ő',
      'ő',
      'č',
      'ł',
    ])
    for (const first of letters) expectAsByEngine(name, letters.map((second) => first + second).join(''))
    const others = covered(name, [...latin, ...signs])
    for (const other of others) expectAsByEngine(name, `A${other}V f${other}o1${other}`)
  })

  test.each(faces)('in %s: any string', (name) => {
    const character = fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom(...'ffftijlAVTo. ') },
      fc.constantFrom(...covered(name, latin)),
      fc.constantFrom(...covered(name, signs)),
    )
    fc.assert(
      fc.property(fc.array(character, { maxLength: 24 }), (characters) => expectAsByEngine(name, characters.join(''))),
      { numRuns: 300 },
    )
  })

  test('every word of the shipped lists, the demonstration car and a whole report', async () => {
    const shape = vi.spyOn(Typeface.prototype, 'shape')
    await composed(contentFixture(recordFixture()))
    const shaped = new Set(shape.mock.calls.map(([text]) => text))
    shape.mockRestore()
    const folder = join(import.meta.dirname, '..', '..', 'resources')
    for (const path of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
      if (!path.endsWith('.json') || path.startsWith('body-plans')) continue
      for (const text of stringsIn(JSON.parse(readFileSync(join(folder, path), 'utf8')))) {
        for (const word of text.match(/\S+\s*/g) ?? []) shaped.add(word)
      }
    }
    expect(shaped.size).toBeGreaterThan(3000)
    for (const name of ['text', 'italic'] as const) {
      for (const text of shaped) {
        if ([...text].every((character) => typeface(name).covers(character.codePointAt(0) ?? 0))) {
          expectAsByEngine(name, text)
        }
      }
    }
  })
})
