// Engine bay, floor from below, brake hose and hub.
import { circle, raking, rule, rust, stroke, tall, wide } from './demonstration-photographs.materials.mjs'
import { lit, mask, mottle, noise, raise, rough, surface, tint } from './demonstration-photographs.surfaces.mjs'

/** A rubber hose with its ferrule; `cracked` opens the outer layer beside it. */
async function hose([w, h], cracked, seed) {
  const scene = surface(w, h, [0.05, 0.047, 0.042], 0.05)
  raise(scene, rough(w, h, 60, 5, 0.6, seed), 5)
  mottle(scene, rough(w, h, 150, 5, 0.6, seed + 2), 0.5)
  if (cracked)
    tint(
      scene,
      rough(w, h, 120, 5, 0.65, seed + 4).map((n) => Math.max(0, n * 0.8 - 0.1)),
      rust,
      0.02,
    )
  const body = 'M420 -40 C430 420 560 700 560 1010 L560 1640'
  for (const [width, blur, up] of [
    [230, 26, 60],
    [150, 30, 50],
  ])
    raise(scene, await mask(w, h, stroke(body, width), blur), up)
  tint(
    scene,
    await mask(w, h, stroke(body, 238), 3),
    cracked ? [0.035, 0.034, 0.033] : [0.02, 0.02, 0.022],
    cracked ? 0.06 : 0.35,
  )
  raise(scene, noise(w, h, 3, seed + 6, 6), 0.3)
  const ferrule = '<rect x="420" y="1040" width="280" height="330" rx="24"/>'
  raise(scene, await mask(w, h, ferrule, 20), 60)
  tint(scene, await mask(w, h, ferrule, 2), cracked ? [0.22, 0.17, 0.12] : [0.5, 0.46, 0.3], cracked ? 0.12 : 0.6)
  for (const y of [1110, 1200, 1290])
    raise(scene, await mask(w, h, `<rect x="420" y="${y}" width="280" height="16"/>`, 4), -10)
  if (!cracked) return lit(scene, { lamp: { x: -0.8, y: -0.4, z: 0.6 }, power: 1.5, seed })
  for (const [y, length, width] of [
    [930, 190, 16],
    [965, 150, 11],
    [900, 120, 9],
    [1000, 110, 8],
    [870, 70, 6],
  ]) {
    const path = `M${560 - length / 2} ${y} q${length / 4} 14 ${length / 2} 2 t${length / 2} -6`
    raise(scene, await mask(w, h, stroke(path, width), 2), -22)
    tint(scene, await mask(w, h, stroke(path, width * 0.55), 1), [0.4, 0.36, 0.27], 0.02)
  }
  return lit(scene, { lamp: { x: -0.8, y: -0.4, z: 0.6 }, power: 1.8, seed })
}

export const underside = {
  async 'flitch-ripples'() {
    const [w, h] = wide
    const scene = surface(w, h, [0.028, 0.028, 0.029], 0.28)
    raise(scene, noise(w, h, 7, 251, 60), 0.5)
    for (const [k, x] of [430, 760, 1060].entries()) {
      raise(
        scene,
        await mask(w, h, stroke(`M${x - 90} 150 C${x + 40} 420 ${x - 50} 700 ${x + 60} 960`, 150), 55),
        62 - k * 9,
      )
    }
    raise(scene, await mask(w, h, '<rect x="1390" y="-20" width="260" height="1120"/>', 26), 70)
    for (const y of [180, 390, 600, 810]) raise(scene, await mask(w, h, circle(1320, y, 24), 9), -7)
    mottle(scene, rough(w, h, 160, 5, 0.6, 253), 0.35)
    return lit(scene, { lamp: { x: -1, y: -0.15, z: 0.5 }, power: 3, sky: 0.7, seed: 41 })
  },
  async 'floor-patch'() {
    const [w, h] = wide
    const scene = surface(w, h, [0.045, 0.042, 0.04], 0.06)
    raise(scene, rough(w, h, 40, 5, 0.62, 261), 4)
    const bead = 'M330 230 L330 820 L1270 790 L1250 250'
    raise(scene, await mask(w, h, '<polygon points="330,230 1250,250 1270,790 330,820"/>', 4), 9)
    tint(scene, await mask(w, h, '<polygon points="330,230 1250,250 1270,790 330,820"/>', 4), [0.1, 0.085, 0.07], 0.08)
    raise(scene, await mask(w, h, stroke(bead, 30), 7), 14)
    let ripples = ''
    for (let y = 240; y < 815; y += 13) ripples += `<rect x="312" y="${y}" width="36" height="6"/>`
    for (let x = 335; x < 1265; x += 13)
      ripples += `<rect x="${x}" y="${801 - (x - 330) * 0.032}" width="6" height="36" transform="translate(0 -10)"/>`
    raise(scene, await mask(w, h, ripples, 2), 5)
    for (const x of [390, 590, 830, 1040]) raise(scene, await mask(w, h, stroke(`M${x} 232 l58 1`, 30), 7), 20)
    tint(
      scene,
      rough(w, h, 120, 5, 0.65, 263).map((n) => Math.max(0, n * 0.7 - 0.08)),
      rust,
      0.02,
    )
    raise(scene, await mask(w, h, stroke('M-20 120 L1620 140 M-20 950 L1620 930', 60), 16), 22)
    return lit(scene, { lamp: { x: 0.7, y: 0.5, z: 0.6 }, power: 1.8, sky: 0.5, seed: 43 })
  },
  'brake-hose': () => hose(tall, true, 271),
  'brake-hose-after': () => hose(tall, false, 281),
  async 'wheel-studs'() {
    const [w, h] = tall
    const scene = surface(w, h, [0.05, 0.045, 0.04], 0.08)
    raise(scene, rough(w, h, 30, 5, 0.6, 291), 2)
    raise(scene, await mask(w, h, circle(533, 800, 480), 14), 30)
    tint(scene, await mask(w, h, circle(533, 800, 476), 2), [0.13, 0.1, 0.08], 0.1)
    raise(scene, await mask(w, h, circle(533, 800, 150), 16), 60)
    tint(scene, await mask(w, h, circle(533, 800, 142), 3), [0.24, 0.22, 0.2], 0.25)
    for (let k = 0; k < 4; k++) {
      const turn = Math.PI / 4 + (k * Math.PI) / 2
      const [x, y] = [533 + 305 * Math.cos(turn), 800 + 305 * Math.sin(turn)]
      const [ox, oy] = [533 + 295 * Math.cos(turn + 0.52), 800 + 295 * Math.sin(turn + 0.52)]
      raise(scene, await mask(w, h, circle(ox, oy, 34), 5), -10)
      tint(scene, await mask(w, h, circle(ox, oy, 31), 4), [0.3, 0.29, 0.28], 0.2)
      raise(scene, await mask(w, h, circle(x, y, 40), 3), 50)
      tint(scene, await mask(w, h, circle(x, y, 40), 1), [0.36, 0.34, 0.3], 0.4)
      for (const r of [30, 22, 14])
        raise(
          scene,
          await mask(w, h, `<circle cx="${x}" cy="${y}" r="${r}" fill="none" stroke="#fff" stroke-width="3"/>`, 1),
          -5,
        )
    }
    mottle(scene, rough(w, h, 140, 5, 0.6, 293), 0.3)
    await rule(scene, 90, 1440, 130, 6.1)
    return lit(scene, { lamp: { ...raking, y: -0.6 }, power: 1.4, seed: 45 })
  },
}
