import { writeFileSync } from 'node:fs'
import { resourcePath } from '../../electron/places-on-disk.ts'
import { front } from './coupe-front.ts'
import { openings } from './coupe-openings.ts'
import { rear } from './coupe-rear.ts'
import { roof } from './coupe-roof.ts'
import { size } from './coupe-shape.ts'
import { side } from './coupe-side.ts'
import { bay, floor, under } from './coupe-trays.ts'
import { type CutView, cutView } from './cut-view.ts'

/** Where the drawing stands on the outside sheet, mm: ground lines and centre lines. */
const sheet = {
  width: 6700,
  height: 4960,
  station0: 70,
  leftGround: 1370,
  roofMiddle: 2551,
  rightGround: 4899,
  ends: 5860,
}

function coupe() {
  const wing = { x: sheet.station0, y: sheet.leftGround - size.height }
  const left = cutView(side('L', wing))
  const above = cutView(roof({ x: sheet.station0, y: sheet.roofMiddle - size.width / 2 }))
  const ends = sheet.ends - size.width / 2
  const outside = [
    left,
    above,
    cutView(side('R', { x: sheet.station0, y: sheet.rightGround - size.height })),
    cutView(front({ x: ends, y: sheet.leftGround - size.height })),
    cutView(rear({ x: ends, y: sheet.rightGround - size.height })),
  ]
  const page = (id: string, name: string, widthMm: number, heightMm: number, views: CutView[]) => ({
    id,
    name,
    widthMm,
    heightMm,
    views,
  })
  return {
    body: 'coupe',
    title: 'Coupé, unfolded',
    dimensions: {
      lengthMm: size.length,
      wheelbaseMm: size.wheelbase,
      widthMm: size.width,
      heightMm: size.height,
    },
    sheets: [
      page('outside', 'Outside', sheet.width, sheet.height, outside),
      page('openings', 'Openings', 4980, 2980, [cutView(openings(left, above, { x: 40, y: 120 }))]),
      page('bay', 'Engine bay', 2240, 1960, [cutView(bay({ x: 300, y: 120 }))]),
      page('floor', 'Inside', 4020, 2400, [cutView(floor({ x: 100, y: 120 }))]),
      page('under', 'Underneath', 4450, 1960, [cutView(under({ x: 100, y: 172 }))]),
    ],
  }
}

const target = resourcePath('body-plans', 'coupe.json')
writeFileSync(target, `${JSON.stringify(coupe(), null, 1)}\n`)
console.log(`Body plan written: ${target}`)
