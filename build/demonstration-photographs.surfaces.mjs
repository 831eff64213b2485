// A surface as a field of heights with a colour and a gloss at every pixel, and the picture a raking lamp makes of it.
import { readFileSync } from 'node:fs'
import { create } from '@cantoo/fontkit'
import sharp from 'sharp'

const fontFile = new URL('../resources/fonts/SourceCodePro-Medium.ttf', import.meta.url)
const face = create(readFileSync(fontFile))

/** Pseudo-random number in 0..1 from three integers; the same on every machine. */
function hash(x, y, seed) {
  let h = Math.imul(x, 374761393) ^ Math.imul(y, 668265263) ^ Math.imul(seed, 1274126177)
  h = Math.imul(h ^ (h >>> 13), 1274126177)
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296
}

const smooth = (t) => t * t * (3 - 2 * t)

/** Value noise with the given cell size in pixels, −1..1; `stretch` lengthens the cells along x. */
export function noise(width, height, cell, seed, stretch = 1) {
  const out = new Float32Array(width * height)
  for (let y = 0; y < height; y++) {
    const gy = y / cell
    const y0 = Math.floor(gy)
    const ty = smooth(gy - y0)
    for (let x = 0; x < width; x++) {
      const gx = x / (cell * stretch)
      const x0 = Math.floor(gx)
      const tx = smooth(gx - x0)
      const top = hash(x0, y0, seed) * (1 - tx) + hash(x0 + 1, y0, seed) * tx
      const low = hash(x0, y0 + 1, seed) * (1 - tx) + hash(x0 + 1, y0 + 1, seed) * tx
      out[y * width + x] = 2 * (top * (1 - ty) + low * ty) - 1
    }
  }
  return out
}

/** Several sizes of noise added, each smaller one weaker by `fall`. */
export function rough(width, height, cell, octaves, fall, seed, stretch = 1) {
  const out = new Float32Array(width * height)
  let weight = 1
  for (let k = 0; k < octaves; k++) {
    const layer = noise(width, height, Math.max(1.5, cell / 2 ** k), seed + k * 17, stretch)
    for (let i = 0; i < out.length; i++) out[i] += layer[i] * weight
    weight *= fall
  }
  return out
}

/** Path of a line of letters, its baseline starting at x, y; `size` is the height of the em in pixels. */
export function letters(text, x, y, size, spacing = 0) {
  const scale = size / face.unitsPerEm
  let at = x
  const parts = []
  for (const glyph of face.layout(text).glyphs) {
    parts.push(`<path transform="translate(${at} ${y}) scale(${scale} ${-scale})" d="${glyph.path.toSVG()}"/>`)
    at += glyph.advanceWidth * scale + spacing
  }
  return parts.join('')
}

/** Draws SVG shapes in white on black and softens their edges by `blur` pixels; 0..1. */
export async function mask(width, height, shapes, blur = 0) {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><rect width="100%" height="100%"/><g fill="#fff" stroke="none">${shapes}</g></svg>`
  let picture = sharp(Buffer.from(svg)).removeAlpha().greyscale()
  if (blur >= 0.3) picture = picture.blur(blur)
  const raw = await picture.raw().toBuffer()
  const out = new Float32Array(width * height)
  for (let i = 0; i < out.length; i++) out[i] = raw[i] / 255
  return out
}

/** An empty surface of one colour. */
export function surface(width, height, colour, gloss = 0.15) {
  const pixels = width * height
  const paint = new Float32Array(pixels * 3)
  for (let i = 0; i < pixels; i++) paint.set(colour, i * 3)
  return { width, height, heights: new Float32Array(pixels), paint, gloss: new Float32Array(pixels).fill(gloss) }
}

/** Adds `amount` times a field to the heights. */
export function raise(scene, field, amount) {
  for (let i = 0; i < field.length; i++) scene.heights[i] += field[i] * amount
}

/** Lays a colour over the surface where the field is 1, in part where it is less; and a gloss if one is given. */
export function tint(scene, field, colour, gloss) {
  for (let i = 0; i < field.length; i++) {
    const share = Math.min(1, Math.max(0, field[i]))
    for (let c = 0; c < 3; c++) scene.paint[i * 3 + c] += (colour[c] - scene.paint[i * 3 + c]) * share
    if (gloss !== undefined) scene.gloss[i] += (gloss - scene.gloss[i]) * share
  }
}

/** Darkens or lightens the colour by a field, for dirt and stains. */
export function mottle(scene, field, amount) {
  for (let i = 0; i < field.length; i++) for (let c = 0; c < 3; c++) scene.paint[i * 3 + c] *= 1 + field[i] * amount
}

/** Share of the lamp's light that reaches each pixel, by walking a few steps towards the lamp. */
function lampReaches(scene, lamp, reach) {
  const { width, height, heights } = scene
  const out = new Float32Array(width * height).fill(1)
  const flat = Math.hypot(lamp.x, lamp.y)
  const stepX = lamp.x / flat
  const stepY = lamp.y / flat
  const rise = lamp.z / flat
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const here = heights[y * width + x]
      let hidden = 0
      for (let s = 2; s <= reach; s += 2) {
        const px = Math.round(x + stepX * s)
        const py = Math.round(y + stepY * s)
        if (px < 0 || py < 0 || px >= width || py >= height) break
        hidden = Math.max(hidden, heights[py * width + px] - here - rise * s)
      }
      out[y * width + x] = 1 / (1 + hidden * 0.5)
    }
  return out
}

/** The picture: diffuse and mirror light of one lamp, a weak sky, shadows, vignette and grain. Raw RGB bytes. */
export function lit(scene, { lamp, sky = 0.3, power = 1.5, reach = 60, falloff = 0.35, seed = 1 }) {
  const { width, height, heights, paint, gloss } = scene
  const length = Math.hypot(lamp.x, lamp.y, lamp.z)
  const l = { x: lamp.x / length, y: lamp.y / length, z: lamp.z / length }
  const half = Math.hypot(l.x, l.y, l.z + 1)
  const reaches = lampReaches(scene, l, reach)
  const out = Buffer.alloc(width * height * 3)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const i = y * width + x
      const dx = heights[y * width + Math.min(width - 1, x + 1)] - heights[y * width + Math.max(0, x - 1)]
      const dy = heights[Math.min(height - 1, y + 1) * width + x] - heights[Math.max(0, y - 1) * width + x]
      const n = 1 / Math.hypot(dx / 2, dy / 2, 1)
      const nx = (-dx / 2) * n
      const ny = (-dy / 2) * n
      const u = x / width - 0.5
      const v = y / height - 0.5
      const fade = 1 + falloff * (u * l.x + v * l.y) * 2 - 0.45 * (u * u + v * v)
      const direct = Math.max(0, nx * l.x + ny * l.y + n * l.z) * reaches[i] * power * fade
      const mirror = Math.max(0, (nx * l.x + ny * l.y + n * (l.z + 1)) / half) ** 40 * gloss[i] * reaches[i] * fade
      const grain = (hash(x, y, seed) + hash(x + 7, y + 3, seed) - 1) * 0.022
      for (let c = 0; c < 3; c++) {
        const light = paint[i * 3 + c] * (direct + sky * (0.6 + 0.4 * n) * fade) + mirror + grain
        out[i * 3 + c] = 255 * Math.min(1, Math.max(0, light)) ** 0.4545 + 0.5
      }
    }
  return sharp(out, { raw: { width, height, channels: 3 } })
}
