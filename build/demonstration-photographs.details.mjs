// Openings, dials, and the whole car on the survey board.
import { existsSync, readFileSync } from 'node:fs'
import {
  circle,
  dark,
  green,
  grey,
  polygon,
  rule,
  rust,
  skin,
  steel,
  stroke,
  tall,
  wide,
} from './demonstration-photographs.materials.mjs'
import {
  letters,
  lit,
  mask,
  mottle,
  noise,
  raise,
  rough,
  surface,
  tint,
} from './demonstration-photographs.surfaces.mjs'

const planFile = new URL('../resources/body-plans/coupe.json', import.meta.url)

/** Outline strokes of the left view, in the car's millimetres. */
function leftView() {
  if (!existsSync(planFile)) throw new Error('Draw the body plan first: resources/body-plans/coupe.json is not there.')
  const plan = JSON.parse(readFileSync(planFile, 'utf8'))
  const view = plan.sheets.flatMap((sheet) => sheet.views).find((one) => one.id === 'left')
  const heavy = `<path d="${view.silhouette}" fill="none" stroke="#fff" stroke-width="13"/>`
  const fine = [...view.ink.map((line) => line.path), ...view.panels.map((panel) => panel.outline)]
  return heavy + fine.map((d) => `<path d="${d}" fill="none" stroke="#fff" stroke-width="5"/>`).join('')
}

export const details = {
  async 'whole-car'() {
    const [w, h] = wide
    const scene = surface(w, h, [0.16, 0.1, 0.055], 0.08)
    raise(scene, noise(w, h, 9, 201, 70), 0.7)
    mottle(scene, noise(w, h, 22, 203, 40), 0.2)
    const sheet = '<polygon points="120,110 1490,80 1520,960 95,990"/>'
    raise(scene, await mask(w, h, sheet, 2), 5)
    tint(scene, await mask(w, h, sheet, 0.6), [0.74, 0.71, 0.63], 0.03)
    raise(scene, noise(w, h, 500, 205), 6)
    const car = `<g transform="translate(180 810) rotate(-1.1) skewX(-1.2) scale(0.292)">${leftView()}</g>`
    const ground = stroke('M160 812 L1460 788', 3)
    tint(scene, await mask(w, h, car + ground, 0.7), [0.05, 0.05, 0.06], 0.02)
    const words = `${letters('NTC 604', 190, 240, 58)}${letters('14 MAY 2026  LEFT  AS ARRIVED', 190, 300, 36)}${letters('4 252', 770, 900, 40)}`
    const dimension = stroke('M190 856 L1410 832 M190 836 L190 876 M1410 812 L1410 852', 3)
    tint(scene, await mask(w, h, `<g transform="rotate(-1)">${words}</g>${dimension}`, 0.8), [0.13, 0.14, 0.17], 0.02)
    for (const [x, y] of [
      [150, 138],
      [1462, 110],
      [1490, 930],
      [124, 958],
    ]) {
      raise(scene, await mask(w, h, circle(x, y, 15), 4), 22)
      tint(scene, await mask(w, h, circle(x, y, 15), 1), [0.5, 0.42, 0.2], 0.6)
    }
    return lit(scene, { lamp: { x: -0.5, y: -0.7, z: 1.3 }, power: 0.8, reach: 30, seed: 31 })
  },
  async odometer() {
    const [w, h] = wide
    const scene = surface(w, h, [0.02, 0.021, 0.022], 0.12)
    raise(scene, rough(w, h, 6, 2, 0.6, 211), 0.2)
    const arc = stroke('M150 330 A 900 900 0 0 1 1450 330', 8)
    let marks = ''
    for (let k = -4; k <= 4; k++)
      marks += `<rect x="794" y="60" width="12" height="${k % 2 ? 46 : 78}" transform="rotate(${k * 8} 800 1000)"/>`
    tint(scene, await mask(w, h, `${arc}${marks}${letters('MILES', 690, 440, 74, 0)}`, 0.8), [0.62, 0.6, 0.5], 0.05)
    raise(scene, await mask(w, h, '<rect x="270" y="520" width="1060" height="300" rx="14"/>', 4), -30)
    for (const [k, figure] of [...'61208'].entries()) {
      const x = 300 + k * 204
      const lift = [0, 5, -4, 2, 26][k]
      const drum = `<rect x="${x}" y="545" width="184" height="250" rx="4"/>`
      tint(scene, await mask(w, h, drum), [0.035, 0.034, 0.033], 0.25)
      raise(scene, await mask(w, h, `<rect x="${x}" y="605" width="184" height="130"/>`, 40), 26)
      tint(scene, await mask(w, h, letters(figure, x + 24, 755 + lift, 225), 0.9), [0.66, 0.64, 0.56], 0.1)
    }
    const dust = rough(w, h, 3, 3, 0.8, 213).map((n) => Math.max(0, n - 1.05) * 0.6)
    tint(scene, dust, [0.4, 0.38, 0.33], 0.02)
    const shine = await mask(w, h, '<polygon points="980,-20 1240,-20 760,1100 480,1100"/>', 60)
    tint(
      scene,
      shine.map((s) => s * 0.1),
      [0.7, 0.75, 0.8],
      0.1,
    )
    return lit(scene, { lamp: { x: -0.3, y: -0.7, z: 0.9 }, power: 1.2, sky: 0.5, reach: 40, seed: 33 })
  },
  async 'tail-hole'() {
    const [w, h] = wide
    const scene = skin(wide, grey, 221, 0.2)
    const ragged =
      '<path d="M430 610 L520 560 L610 585 L700 545 L800 575 L900 552 L1010 590 L1120 570 L1180 630 L1130 690 L1030 672 L930 705 L830 680 L720 706 L610 684 L500 700 z"/>'
    const bubbling = await mask(w, h, '<ellipse cx="800" cy="620" rx="560" ry="170"/>', 60)
    const crust = rough(w, h, 34, 5, 0.66, 223)
    raise(
      scene,
      crust.map((n, i) => Math.max(0, n) * bubbling[i]),
      9,
    )
    tint(
      scene,
      crust.map((n, i) => Math.max(0, n * 1.4 + 0.1) * bubbling[i] ** 1.5 * 1.4),
      rust,
      0.02,
    )
    raise(scene, await mask(w, h, ragged, 5), -60)
    tint(scene, await mask(w, h, ragged, 2), dark, 0)
    raise(scene, await mask(w, h, stroke('M-20 770 L1620 782', 22), 5), -16)
    tint(scene, await mask(w, h, stroke('M-20 770 L1620 782', 10), 3), dark, 0.02)
    await rule(scene, 420, 880, 160, 4.6)
    return lit(scene, { lamp: { x: -0.7, y: -0.6, z: 0.6 }, seed: 35 })
  },
  async 'glass-overspray'() {
    const [w, h] = wide
    const scene = surface(w, h, [0.018, 0.024, 0.026], 0.5)
    const rubber = 'M-60 240 C260 330 420 640 640 780 C860 900 1200 930 1660 940'
    const mist = rough(w, h, 4, 3, 0.85, 231)
    const near = await mask(w, h, stroke(rubber, 330), 60)
    tint(
      scene,
      mist.map((n, i) => Math.max(0, n - 0.15) * near[i] * 0.75),
      grey,
      0.1,
    )
    const paint = await mask(
      w,
      h,
      '<path d="M-60 300 C240 390 400 700 620 850 C850 990 1200 1010 1660 1020 L1660 1100 L-60 1100 z"/>',
      6,
    )
    tint(scene, paint, grey, 0.3)
    raise(scene, await mask(w, h, stroke(rubber, 130), 22), 40)
    tint(scene, await mask(w, h, stroke(rubber, 132), 3), [0.02, 0.02, 0.02], 0.08)
    raise(scene, await mask(w, h, stroke(rubber, 8), 3), -12)
    const lip = await mask(w, h, stroke('M-60 285 C250 375 410 690 628 830 C855 955 1200 985 1660 992', 62), 10)
    tint(
      scene,
      lip.map((l, i) => (l * (0.75 + 0.5 * mist[i]) > 0.45 ? 0.92 : 0)),
      grey,
      0.15,
    )
    return lit(scene, { lamp: { x: -0.6, y: -0.8, z: 0.7 }, seed: 37 })
  },
  async 'badge-holes'() {
    const [w, h] = tall
    const scene = skin(tall, grey, 241, 0.35)
    const ghost = await mask(w, h, `<g transform="rotate(-4 500 760)">${letters('Lantern', 110, 820, 210, -8)}</g>`, 3)
    tint(
      scene,
      ghost.map((g) => g * 0.5),
      [0.5, 0.51, 0.5],
      0.5,
    )
    for (const [x, y] of [
      [270, 590],
      [812, 632],
    ]) {
      raise(scene, await mask(w, h, circle(x, y, 62), 14), 9)
      tint(scene, await mask(w, h, polygon(x, y, 52, 9, 0.3), 3), green, 0.1)
      tint(scene, await mask(w, h, circle(x, y, 38), 2), steel, 0.3)
      raise(scene, await mask(w, h, circle(x, y, 31), 2), -60)
      tint(scene, await mask(w, h, circle(x, y, 29), 1), dark, 0)
      raise(scene, await mask(w, h, stroke(`M${x + 26} ${y - 22} q20 8 14 34`, 8), 2), 12)
    }
    raise(scene, await mask(w, h, circle(866, 588, 6), 2), -14)
    tint(scene, await mask(w, h, circle(866, 588, 5), 1), dark, 0)
    await rule(scene, 130, 1300, 70, 10.5)
    return lit(scene, { lamp: { x: 0.8, y: -0.5, z: 0.55 }, seed: 39 })
  },
}
