// What the pictures of numbers and of the outside of the demonstration car show.
import {
  above,
  bolt,
  casting,
  circle,
  dark,
  green,
  grey,
  raking,
  rule,
  rust,
  sandingLines,
  skin,
  stamped,
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

export const scenes = {
  async 'engine-number'() {
    const [w, h] = wide
    const scene = casting(wide, 11, 2.9)
    const pad = '<rect x="210" y="350" width="1180" height="400" rx="10"/>'
    const flat = await mask(w, h, pad, 1)
    for (let i = 0; i < flat.length; i++) scene.heights[i] *= 1 - flat[i]
    raise(scene, await mask(w, h, pad, 5), 16)
    tint(scene, flat, steel, 0.12)
    const milling = noise(w, h, 5, 31, 90)
    raise(
      scene,
      milling.map((m, i) => m * flat[i]),
      0.5,
    )
    await stamped(scene, 'L17 20934', 268, 612, 190, -11, 4, 1)
    return lit(scene, { lamp: raking, seed: 3 })
  },
  async 'casting-date'() {
    const [w, h] = wide
    const scene = casting(wide, 23, 2.6)
    await stamped(scene, '7 62', 420, 660, 330, 15, 4, 5)
    raise(scene, await mask(w, h, stroke('M-20 900 L1620 950', 26), 4), 22)
    raise(scene, await mask(w, h, `${circle(1340, 250, 120)}<circle cx="1340" cy="250" r="74" fill="#000"/>`, 4), 14)
    mottle(scene, await mask(w, h, '<rect x="330" y="380" width="880" height="360" rx="160"/>', 60), 0.5)
    return lit(scene, { lamp: { x: -0.7, y: -0.8, z: 0.5 }, seed: 5 })
  },
  async 'gearbox-number'() {
    const [w, h] = wide
    const scene = surface(w, h, [0.34, 0.34, 0.33], 0.14)
    raise(scene, rough(w, h, 18, 4, 0.6, 41), 1.2)
    raise(scene, await mask(w, h, stroke('M-20 180 L1620 120', 46), 8), 30)
    raise(scene, await mask(w, h, '<rect x="280" y="430" width="1040" height="300" rx="26"/>', 5), 9)
    await stamped(scene, 'V3 0412', 360, 640, 210, -9, 3)
    const oil = rough(w, h, 260, 5, 0.6, 47).map((n, i) => Math.max(0, n + i / w / h - 0.55))
    tint(scene, oil, [0.03, 0.022, 0.014], 0.5)
    await rule(scene, 320, 880, 60, 14)
    return lit(scene, { lamp: above, seed: 7 })
  },
  async 'chassis-plate'() {
    const [w, h] = wide
    const scene = skin(wide, green, 51)
    const plate = '<rect x="160" y="210" width="1280" height="640" rx="34"/>'
    raise(scene, await mask(w, h, plate, 3), 12)
    tint(scene, await mask(w, h, plate), [0.5, 0.49, 0.46], 0.3)
    raise(scene, noise(w, h, 4, 53, 60), 0.25)
    const frame = '<rect x="205" y="255" width="1190" height="550" rx="16" fill="none" stroke="#fff" stroke-width="8"/>'
    raise(scene, await mask(w, h, frame, 2), 6)
    raise(scene, await mask(w, h, letters('BRACKWATER MOTORS', 364, 390, 85, 0), 1.4), 7)
    raise(scene, await mask(w, h, letters('NETHERCOTT', 530, 480, 66, 8), 1.4), 6)
    raise(scene, await mask(w, h, stroke('M330 690 L1270 690', 4), 1), -4)
    await stamped(scene, 'SC 11387', 400, 665, 170, -8, 4)
    for (const [x, y] of [
      [250, 300],
      [1350, 300],
      [250, 760],
    ]) {
      raise(scene, await mask(w, h, circle(x, y, 30), 2), 9)
      raise(scene, await mask(w, h, circle(x, y, 21), 1.5), -3)
      tint(scene, await mask(w, h, circle(x, y, 30)), [0.3, 0.3, 0.28], 0.15)
    }
    raise(scene, await mask(w, h, circle(1350, 760, 34), 12), 26)
    tint(scene, await mask(w, h, circle(1350, 760, 33)), [0.62, 0.62, 0.6], 0.7)
    mottle(scene, rough(w, h, 90, 5, 0.65, 57), 0.14)
    return lit(scene, { lamp: { x: 0.8, y: -0.6, z: 0.7 }, seed: 9 })
  },
  async 'body-tag'() {
    const [w, h] = wide
    const scene = skin(wide, green, 61, 0.35)
    const tag = '<rect x="390" y="350" width="820" height="360" rx="40"/>'
    raise(scene, await mask(w, h, tag, 6), 11)
    await stamped(scene, 'B2 5519', 492, 585, 145, -9, 4, 1.4)
    for (const x of [440, 1160]) raise(scene, await mask(w, h, circle(x, 530, 22), 5), 9)
    const mist = rough(w, h, 5, 3, 0.8, 63).map((n, i) => Math.max(0, n - 1.15 + 3.4 * Math.max(0, (i % w) / w - 0.72)))
    tint(scene, mist, grey, 0.2)
    return lit(scene, { lamp: { x: -0.8, y: -0.5, z: 0.55 }, seed: 11 })
  },
  async 'wing-bolts'() {
    const [w, h] = wide
    const scene = skin(wide, grey, 71, 0.2)
    raise(scene, await mask(w, h, '<rect x="-40" y="330" width="1700" height="430"/>', 12), -26)
    const gutter = `${stroke('M-20 318 L1620 345', 26)}${stroke('M-20 792 L1620 770', 34)}`
    raise(scene, await mask(w, h, gutter, 5), -18)
    tint(scene, await mask(w, h, gutter, 6), dark, 0.03)
    for (const [k, x] of [210, 600, 985, 1385].entries())
      await bolt(scene, x, 545 + (k % 2) * 8, 74, 0.2 + k * 0.55, 73 + k)
    await rule(scene, 300, 905, 200, 4.6)
    return lit(scene, { lamp: { x: 0.75, y: -0.7, z: 0.55 }, reach: 80, seed: 13 })
  },
  async 'wing-lip'() {
    const [w, h] = tall
    const scene = skin(tall, [0.3, 0.31, 0.3], 81, 0.12)
    raise(scene, await mask(w, h, '<rect x="700" y="-20" width="420" height="1700"/>', 22), 46)
    for (const y of [1120, 1300]) {
      raise(scene, await mask(w, h, `<ellipse cx="420" cy="${y}" rx="80" ry="42"/>`, 5), -40)
      tint(scene, await mask(w, h, `<ellipse cx="420" cy="${y}" rx="72" ry="36"/>`, 2), dark, 0)
    }
    await stamped(scene, 'R 63', 190, 520, 170, -8, 4, 2)
    const stain = rough(w, h, 160, 5, 0.62, 83).map((n, i) => Math.max(0, n * 0.7 + (i / w / h - 0.62) * 2))
    tint(scene, stain, rust, 0.02)
    await rule(scene, 120, 1420, 100, 6.5)
    return lit(scene, { lamp: { x: -0.9, y: -0.4, z: 0.6 }, seed: 15 })
  },
  async 'sill-lead'() {
    const [w, h] = wide
    const scene = skin(wide, grey, 91, 0.4)
    raise(scene, await mask(w, h, '<rect x="-40" y="760" width="1700" height="400"/>', 40), -50)
    raise(scene, await mask(w, h, '<rect x="640" y="-60" width="330" height="1000"/>', 90), 9)
    const chip = '<path d="M760 470 l52 -34 l60 18 l24 50 l-38 44 l-66 8 l-40 -36 z"/>'
    raise(scene, await mask(w, h, chip, 2), -5)
    tint(
      scene,
      await mask(w, h, '<path d="M742 470 l66 -52 l78 22 l34 64 l-48 60 l-86 10 l-54 -46 z"/>', 1),
      green,
      0.1,
    )
    tint(scene, await mask(w, h, chip, 1), [0.62, 0.63, 0.66], 0.35)
    await rule(scene, 330, 905, 150, 6)
    return lit(scene, { lamp: { x: -1, y: -0.1, z: 0.34 }, seed: 17 })
  },
  async 'sill-filler'() {
    const [w, h] = wide
    const scene = skin(wide, grey, 101, 0.2)
    raise(scene, rough(w, h, 90, 4, 0.6, 103), 4)
    raise(scene, await mask(w, h, stroke('M-20 410 L760 440', 16), 3), -16)
    tint(scene, await mask(w, h, stroke('M-20 410 L740 438', 9), 2), dark, 0)
    await sandingLines(scene, '<path d="M-50 760 L500 640 L800 380 L1650 330 L1650 1120 L-50 1120 z"/>', 40, 13, 105)
    const crack = 'M520 730 L600 722 L690 748 L780 790 L860 765 L930 742 L1010 770 L1100 782 L1190 800'
    raise(scene, await mask(w, h, stroke(crack, 8), 2), -12)
    tint(scene, await mask(w, h, stroke(crack, 5), 1), dark, 0)
    await rule(scene, 400, 920, 110, 7)
    return lit(scene, { lamp: raking, seed: 19 })
  },
  async 'arch-filler'() {
    const [w, h] = wide
    const scene = skin(wide, grey, 111, 0.2)
    const arch = 'M180 1100 C260 620 620 430 900 430 C1200 430 1460 660 1560 1100'
    const opening = `<path d="${arch} z"/>`
    await sandingLines(scene, '<ellipse cx="980" cy="330" rx="560" ry="250"/>', 60, 15, 113)
    raise(scene, await mask(w, h, '<ellipse cx="1060" cy="260" rx="240" ry="130"/>', 30), -9)
    raise(scene, await mask(w, h, '<ellipse cx="1060" cy="260" rx="190" ry="95"/>', 26), 8)
    raise(scene, await mask(w, h, stroke(arch, 60), 14), 20)
    raise(scene, await mask(w, h, opening, 6), -90)
    tint(scene, await mask(w, h, opening, 6), dark, 0.02)
    return lit(scene, { lamp: { x: 1, y: -0.3, z: 0.4 }, seed: 21 })
  },
}
