// Materials and marks of which the pictures of the demonstration car are made. Colours are linear light, 0 to 1; heights and places are pixels.
import { letters, mask, mottle, noise, raise, rough, surface, tint } from './demonstration-photographs.surfaces.mjs'

export const grey = [0.4, 0.41, 0.4]
export const green = [0.09, 0.15, 0.1]
export const iron = [0.2, 0.19, 0.18]
export const steel = [0.42, 0.42, 0.43]
export const rust = [0.2, 0.085, 0.035]
export const dark = [0.012, 0.012, 0.013]

export const wide = [1600, 1067]
export const tall = [1067, 1600]
export const circle = (x, y, r) => `<circle cx="${x}" cy="${y}" r="${r}"/>`
export const stroke = (path, width) =>
  `<path d="${path}" fill="none" stroke="#fff" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"/>`
export const polygon = (x, y, r, sides, turn) =>
  `<polygon points="${Array.from({ length: sides }, (_, k) => {
    const a = turn + (k * 2 * Math.PI) / sides
    return `${x + r * Math.cos(a)},${y + r * Math.sin(a)}`
  }).join(' ')}"/>`

/** A painted skin: orange peel, faint waves and dust. */
export function skin([w, h], colour, seed, gloss = 0.3) {
  const scene = surface(w, h, colour, gloss)
  raise(scene, rough(w, h, 14, 3, 0.6, seed), 0.35)
  raise(scene, noise(w, h, 300, seed + 5), 5)
  mottle(scene, rough(w, h, 120, 5, 0.6, seed + 9), 0.06)
  return scene
}

/** Sand-cast iron. */
export function casting([w, h], seed, coarse = 2.4) {
  const scene = surface(w, h, iron, 0.08)
  raise(scene, rough(w, h, 26, 5, 0.62, seed), coarse)
  mottle(scene, rough(w, h, 200, 5, 0.6, seed + 3), 0.18)
  return scene
}

/** A white rule laid in the plane of the work: `mm` long, `scale` pixels to a millimetre. */
export async function rule(scene, x, y, mm, scale) {
  const { width: w, height: h } = scene
  const length = mm * scale + 90
  const flat = await mask(w, h, `<rect x="${x}" y="${y}" width="${length}" height="86"/>`)
  for (let i = 0; i < flat.length; i++) scene.heights[i] *= 1 - flat[i]
  raise(scene, await mask(w, h, `<rect x="${x}" y="${y}" width="${length}" height="86" rx="4"/>`, 1), 7)
  tint(
    scene,
    await mask(w, h, `<rect x="${x}" y="${y}" width="${length}" height="86" rx="4"/>`),
    [0.72, 0.7, 0.64],
    0.05,
  )
  let ticks = ''
  const step = scale < 5 ? 5 : 1
  for (let k = 0; k <= mm; k += step) {
    const long = k % 10 === 0 ? 40 : k % 5 === 0 ? 30 : 18
    ticks += `<rect x="${x + 20 + k * scale - 1}" y="${y}" width="2.4" height="${long}"/>`
    if (k % (scale < 9 ? 50 : 10) === 0) ticks += letters(String(k), x + 24 + k * scale, y + 74, 32)
  }
  tint(scene, await mask(w, h, ticks), dark, 0.02)
}

export async function stamped(scene, text, x, y, size, depth, spacing, blur = 1.6) {
  const { width: w, height: h } = scene
  for (const [k, sign] of [...text].entries()) {
    const wobble = Math.sin(k * 12.9 + x) * size * 0.018
    const shape = letters(sign, x + k * (size * 0.6 + spacing), y + wobble, size)
    raise(scene, await mask(w, h, shape, blur), depth * (1 + 0.15 * Math.sin(k * 7.7)))
  }
}

export async function bolt(scene, x, y, r, turn, seed) {
  const { width: w, height: h } = scene
  tint(scene, await mask(w, h, circle(x + 9, y + 5, r * 1.5), 2), green, 0.05)
  raise(scene, await mask(w, h, circle(x, y, r * 1.42), 2), 8)
  tint(scene, await mask(w, h, circle(x, y, r * 1.42), 1), steel, 0.25)
  raise(scene, await mask(w, h, polygon(x, y, r, 6, turn), 2.4), 24)
  tint(scene, await mask(w, h, polygon(x, y, r, 6, turn), 1), [0.3, 0.3, 0.29], 0.3)
  const broken = await mask(w, h, stroke(`M${x - r} ${y - r * 0.2} L${x + r} ${y + r * 0.3}`, r * 0.9), 14)
  const specks = rough(w, h, 18, 3, 0.7, seed)
  tint(
    scene,
    broken.map((b, i) => (b > 0.2 && specks[i] > 0.35 ? 0.9 : 0)),
    grey,
    0.2,
  )
}

export async function sandingLines(scene, shapes, blur, spacing, seed) {
  const { width: w, height: h } = scene
  const place = await mask(w, h, shapes, blur)
  const lines = new Float32Array(w * h)
  const wander = noise(w, h, 180, seed)
  for (let y = 0; y < h; y++)
    for (let x = 0; x < w; x++) {
      const along = x * Math.sin(0.436) + y * Math.cos(0.436) + wander[y * w + x] * 5
      lines[y * w + x] = Math.sin((along * 2 * Math.PI) / spacing) * place[y * w + x]
    }
  raise(scene, lines, 0.95)
  return place
}

/** A lamp low at the left, and one above; places of the lamp, not directions of its light. */
export const raking = { x: -1, y: -0.25, z: 0.42 }
export const above = { x: -0.4, y: -0.8, z: 0.8 }
