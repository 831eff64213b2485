// Pictures to measure on: what they show lies on one plane with known true dimensions, seen by a known camera.
import { dark, grey, skin, steel, wide } from './demonstration-photographs.materials.mjs'
import { letters, lit, mask, raise, rough, tint } from './demonstration-photographs.surfaces.mjs'

/** Pixels of the focal length, millimetres to the plane, and how the camera is turned (radians). */
const camera = { focalPx: 1750, awayMm: 760, pitch: 0.62, yaw: -0.2, roll: 0.035 }

/** Pinhole camera: millimetres on the plane, y towards the driver, to pixels. */
export function seenFrom(xMm, yMm, [width, height] = wide) {
  const { focalPx, awayMm, pitch, yaw, roll } = camera
  const turnedX = xMm * Math.cos(yaw)
  const depthOfX = xMm * Math.sin(yaw)
  const turnedY = yMm * Math.cos(pitch) - depthOfX * Math.sin(pitch)
  const away = awayMm - yMm * Math.sin(pitch) - depthOfX * Math.cos(pitch)
  const x = turnedX * Math.cos(roll) - turnedY * Math.sin(roll)
  const y = turnedX * Math.sin(roll) + turnedY * Math.cos(roll)
  return [width / 2 + (focalPx * x) / away, height / 2 + (focalPx * y) / away]
}

/** True places on the scuttle, mm: the spindles stand 347.4 apart, the card is 300 by 200. */
export const spindles = [
  [-173.7, -60],
  [173.7, -60],
]
export const card = [
  [-150, 10],
  [150, 10],
  [150, 210],
  [-150, 210],
]

const flat = (points) => `<polygon points="${points.map(([x, y]) => seenFrom(x, y).join(',')).join(' ')}"/>`
const ring = ([x, y], radiusMm, sides = 72, turn = 0) =>
  Array.from({ length: sides }, (_, k) => {
    const angle = turn + (2 * Math.PI * k) / sides
    return [x + radiusMm * Math.cos(angle), y + radiusMm * Math.sin(angle)]
  })
const line = (points) =>
  `<polyline points="${points.map(([x, y]) => seenFrom(x, y).join(',')).join(' ')}" fill="none" stroke="#fff" stroke-width="3"/>`

export const measured = {
  async 'wiper-spindles'() {
    const [w, h] = wide
    const scene = skin(wide, grey, 301, 0.3)
    // The lower edge of the screen opening with its rubber, and the gap of the bonnet.
    const edge = Array.from({ length: 61 }, (_, k) => [-600 + 20 * k, -150 - ((k - 30) / 6) ** 2])
    const rubber = flat([...edge, [600, -520], [-600, -520]])
    raise(scene, await mask(w, h, rubber, 8), -30)
    tint(scene, await mask(w, h, rubber, 2), dark, 0.1)
    for (const [at, spindle] of spindles.entries()) {
      const grommet = flat(ring(spindle, 17))
      raise(scene, await mask(w, h, grommet, 3), 8)
      tint(scene, await mask(w, h, grommet, 1), dark, 0.08)
      const nut = flat(ring(spindle, 11.5, 6, 0.3 + at))
      raise(scene, await mask(w, h, nut, 2), 14)
      tint(scene, await mask(w, h, nut, 1), steel, 0.35)
      const shaft = flat(ring(spindle, 3.6))
      raise(scene, await mask(w, h, shaft, 1), 6)
      tint(scene, await mask(w, h, shaft, 0.6), dark, 0.2)
    }
    const paper = flat(card)
    const under = await mask(w, h, paper)
    for (let i = 0; i < under.length; i++) scene.heights[i] *= 1 - under[i]
    raise(scene, await mask(w, h, paper, 1), 5)
    tint(scene, await mask(w, h, paper, 0.5), [0.74, 0.72, 0.66], 0.03)
    const inner = [
      [-140, 20],
      [140, 20],
      [140, 200],
      [-140, 200],
      [-140, 20],
    ]
    let ink = line(inner)
    for (let x = -140; x <= 140; x += 10)
      ink += line([
        [x, 200],
        [x, x % 50 === 0 ? 188 : 194],
      ])
    const [left, base] = seenFrom(-120, 110)
    ink += `<g transform="rotate(9 ${left} ${base})">${letters('300 × 200 mm', left, base, 64)}</g>`
    tint(scene, await mask(w, h, ink, 0.6), [0.05, 0.05, 0.06], 0.02)
    const dust = rough(w, h, 4, 3, 0.8, 307).map((n) => Math.max(0, n - 1.1) * 0.5)
    tint(scene, dust, [0.42, 0.4, 0.35], 0.02)
    return lit(scene, { lamp: { x: -0.7, y: -0.6, z: 0.7 }, seed: 39 })
  },
}
