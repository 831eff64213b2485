import sharp from 'sharp'
import { describe, expect, it } from 'vitest'
import { hatchPattern } from '../../electron/figures/hatch-svg.ts'
import type { HatchName } from '../../shared-types/figure.ts'
import { hatches, isSolid, MM_PER_HATCH_PIXEL } from '../../shared-types/tokens.ts'
import { type GreySquare, type Texture, textureDistance, textureOf } from './picture-spectrum.ts'

const DOTS_PER_MM = 300 / 25.4
const PATCH_MM = 8
const side = Math.floor(PATCH_MM * DOTS_PER_MM)
const names = Object.keys(hatches) as HatchName[]

/** What a printer, a copier and a scanner do to a patch: where it falls, how straight it lies, how fat and soft its lines are. */
interface Printing {
  readonly shiftMm: number
  readonly turnDegrees: number
  readonly fatter: number
  readonly blurDots: number
  readonly noise: number
}
const asDrawn: Printing = { shiftMm: 0, turnDegrees: 0, fatter: 1, blurDots: 0, noise: 0 }
const printings: readonly Printing[] = [
  asDrawn,
  { shiftMm: 0.31, turnDegrees: 0, fatter: 1, blurDots: 0.6, noise: 0.04 },
  { shiftMm: 0.77, turnDegrees: 3, fatter: 1.2, blurDots: 0.6, noise: 0.04 },
  { shiftMm: 0.13, turnDegrees: -3, fatter: 0.85, blurDots: 0.8, noise: 0.04 },
  { shiftMm: 0.52, turnDegrees: 2, fatter: 1.35, blurDots: 1, noise: 0.06 },
]

/** Evenly spread numbers from 0 to 1 that are the same in every run (Park and Miller, Communications of the ACM 31, 1988). */
function spreadNumbers(): () => number {
  let state = 1960
  return () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
}

/** An 8 mm patch of a hatch as it lies on the page: 300 dots to the inch, grey. */
async function printed(name: HatchName, printing: Printing): Promise<GreySquare> {
  const dotsPerPixel = MM_PER_HATCH_PIXEL * DOTS_PER_MM
  const fill = hatches[name] === null ? '' : `<rect x="-20" y="-20" width="200" height="200" fill="url(#${name})"/>`
  const move = `scale(${dotsPerPixel}) translate(${printing.shiftMm * 5} ${printing.shiftMm * 3}) rotate(${printing.turnDegrees})`
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}"><defs>${hatchPattern(name, '#000', printing.fatter, 1)}</defs><rect width="100%" height="100%" fill="#fff"/><g transform="${move}">${fill}</g></svg>`
  const picture = sharp(Buffer.from(svg)).greyscale()
  if (printing.blurDots > 0) picture.blur(printing.blurDots)
  const bytes = await picture.raw().toBuffer()
  const next = spreadNumbers()
  const ink = Float64Array.from(bytes, (value) => 1 - value / 255 + (next() - 0.5) * 2 * printing.noise)
  return { side, ink }
}

const texturesOf = (name: HatchName): Promise<Texture[]> =>
  Promise.all(printings.map(async (printing) => textureOf(await printed(name, printing))))

const pairsOf = <One>(items: readonly One[]): [One, One][] =>
  items.flatMap((one, index) => items.slice(index + 1).map((other): [One, One] => [one, other]))

describe(`hatches printed ${PATCH_MM} mm wide at 300 dots to the inch, in grey`, () => {
  it('any two are farther apart than the worst printing of either is from another printing of itself', async () => {
    const patterned = names.filter((name) => hatches[name] !== null && !isSolid(hatches[name]))
    const textures = new Map<HatchName, Texture[]>()
    for (const name of patterned) textures.set(name, await texturesOf(name))
    const within = (name: HatchName) =>
      Math.max(...pairsOf(textures.get(name) ?? []).map(([one, other]) => textureDistance(one, other)))
    const between = (one: HatchName, other: HatchName) =>
      Math.min(
        ...(textures.get(one) ?? []).flatMap((a) => (textures.get(other) ?? []).map((b) => textureDistance(a, b))),
      )
    const margins = pairsOf(patterned).map(([one, other]) => ({
      pair: `${one} and ${other}`,
      margin: between(one, other) / Math.max(within(one), within(other)),
    }))
    expect(margins.filter(({ margin }) => margin <= 1)).toEqual([])
  })

  it('clean paper and solid ink are told by their darkness alone', async () => {
    const darkness = async (name: HatchName) => textureOf(await printed(name, asDrawn)).darkness
    expect(await darkness('clean')).toBe(0)
    expect(await darkness('rusted-through')).toBeGreaterThan(0.97)
  })

  it('weight follows consequence: what was lost is darker than what was worked on, and solid ink is darkest', async () => {
    const dark = new Map<HatchName, number>()
    for (const name of names) dark.set(name, textureOf(await printed(name, asDrawn)).darkness)
    const of = (name: HatchName) => dark.get(name) ?? Number.NaN
    for (const lesser of ['repaired', 'patch', 'skin', 'replacement', 'filler-over', 'undetermined'] as const) {
      expect(of(lesser)).toBeLessThan(0.2)
      expect(of('filler-through')).toBeGreaterThan(1.5 * of(lesser))
    }
    expect(of('rusted-through')).toBeGreaterThan(2 * of('filler-through'))
    // A whole replaced panel leaves more paper than a repair: fitting a sound one is not the worse news.
    expect(of('replacement')).toBeLessThanOrEqual(of('repaired') + 0.01)
  })

  it('the measure does not tell a hatch from itself, and tells it from its mirror image', async () => {
    const [as, again] = await texturesOf('repaired')
    if (as === undefined || again === undefined) throw new Error('nothing was printed')
    const picture = await printed('repaired', asDrawn)
    const mirrored = {
      side,
      ink: picture.ink.map((_, at) => picture.ink[Math.floor(at / side) * side + (side - 1 - (at % side))] ?? 0),
    }
    expect(textureDistance(as, as)).toBeCloseTo(0, 6)
    expect(textureDistance(as, textureOf(mirrored))).toBeGreaterThan(5 * textureDistance(as, again))
  })
})
