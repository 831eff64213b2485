import { bedFaces } from './bed-faces.ts'
import type { BodyForm } from './body-form.ts'
import type { Face, FaceWork, Facing } from './face.ts'
import { type FlankLine, flankLines } from './flank-lines.ts'
import { glasshouseLines, type WindowLine } from './glasshouse-lines.ts'
import { LineNet } from './line-net.ts'
import { noseLines, tailLines } from './nose-and-tail-lines.ts'
import { deckFaces, uprightFaces } from './rear-faces.ts'
import { bonnetLines, deckLines } from './top-lines.ts'

const facings: Readonly<Record<string, Facing>> = { s: 'side', a: 'above', f: 'front', b: 'back' }

function facingOf(letter: string): Facing {
  const facing = facings[letter]
  if (facing === undefined) throw new Error(`No view is called ${letter}.`)
  return facing
}

/** The body of given form as faces that share their edges. Throws where lines miss each other or a face is not closed. */
export function bodyFaces(form: BodyForm): { net: LineNet; faces: Face[]; windows: readonly WindowLine[] } {
  const net = new LineNet()
  const { lower } = form
  const turns = [form.frontAxleMm, (form.frontAxleMm + form.rearAxleMm) / 2, form.rearAxleMm]
  for (const name of ['foot', 'fullest', 'crest'] as const) {
    const breaks = [1, ...turns.map((x) => lower.roundAt(name, x)), 2].sort((a, b) => a - b)
    net.line(name, { at: lower[name], from: 0, to: 3, breaks })
  }
  noseLines(net, form)
  tailLines(net, form)
  const flank = flankLines(net, form)
  bonnetLines(net, form)
  if (form.description.tail === 'deck') {
    const { rearCorner } = form.upper
    net.mark('crest', 'rear post top of wing', lower.roundAt('crest', rearCorner[0] - lower.halfWidthMm * 0.05))
    deckLines(net, form)
  }
  const windows = glasshouseLines(net, form)
  const faces: Face[] = []
  const add: FaceWork['add'] = (part, facing, ...way) => {
    const steps = way.flatMap(([line, from, to]) => net.along(line, from, to))
    way.forEach(([, , to], index) => {
      const [, next] = way[(index + 1) % way.length] ?? []
      if (next !== to) throw new Error(`${part}: the edge after ${to} begins at ${next}.`)
    })
    faces.push({ part, facing: [...facing].map(facingOf), steps })
  }
  const work: FaceWork = { net, form, flank, windows, add }
  frontFaces(work)
  cabinFaces(work)
  doorFaces(work)
  ;({ deck: deckFaces, upright: uprightFaces, bed: bedFaces })[form.description.tail](work)
  return { net, faces, windows }
}

function frontFaces({ add }: FaceWork): void {
  add(
    'nose-panel',
    'saf',
    ['nose centre', 'nose fullest', 'nose crest'],
    ['crest', 'nose crest', 'nose lamp inner'],
    ['nose lamp inside', 'nose lamp inner', 'nose lamp foot'],
    ['nose seam upper', 'nose lamp foot', 'nose seam fullest'],
    ['fullest', 'nose seam fullest', 'nose fullest'],
  )
  add(
    'front-apron',
    'sf',
    ['nose centre', 'nose foot', 'nose fullest'],
    ['fullest', 'nose fullest', 'nose seam fullest'],
    ['nose seam lower', 'nose seam fullest', 'nose seam foot'],
    ['foot', 'nose seam foot', 'nose foot'],
  )
  add(
    'lamp-housing.L',
    'saf',
    ['crest', 'nose lamp inner', 'nose lamp outer'],
    ['nose lamp outside', 'nose lamp outer', 'nose lamp foot'],
    ['nose lamp inside', 'nose lamp foot', 'nose lamp inner'],
  )
  add(
    'front-side.L',
    'saf',
    ['crest', 'nose lamp outer', 'front arch crest'],
    ['front arch section', 'front arch crest', 'front arch top'],
    ['front arch', 'front arch top', 'front arch ahead fullest'],
    ['fullest', 'front arch ahead fullest', 'nose seam fullest'],
    ['nose seam upper', 'nose seam fullest', 'nose lamp foot'],
    ['nose lamp outside', 'nose lamp foot', 'nose lamp outer'],
  )
  add(
    'front-side.L',
    'sf',
    ['fullest', 'nose seam fullest', 'front arch ahead fullest'],
    ['front arch', 'front arch ahead fullest', 'front arch ahead foot'],
    ['foot', 'front arch ahead foot', 'nose seam foot'],
    ['nose seam lower', 'nose seam foot', 'nose seam fullest'],
  )
  add(
    'front-side.L',
    'sa',
    ['crest', 'front arch crest', 'door front top'],
    ['door front upper', 'door front top', 'door front fullest'],
    ['fullest', 'door front fullest', 'front arch behind fullest'],
    ['front arch', 'front arch behind fullest', 'front arch top'],
    ['front arch section', 'front arch top', 'front arch crest'],
  )
  add(
    'front-side.L',
    's',
    ['fullest', 'front arch behind fullest', 'door front fullest'],
    ['door front lower', 'door front fullest', 'door front sill'],
    ['sill top', 'door front sill', 'front arch sill'],
    ['front arch', 'front arch sill', 'front arch behind fullest'],
  )
  add(
    'front-side.L',
    'saf',
    ['crest', 'nose lamp inner', 'door front top'],
    ['post foot', 'door front top', 'screen corner'],
    ['scuttle side', 'screen corner', 'bonnet rear corner'],
    ['bonnet side', 'bonnet rear corner', 'bonnet front corner'],
    ['nose seam top', 'bonnet front corner', 'nose lamp inner'],
  )
  add(
    'nose-panel',
    'saf',
    ['crest', 'nose crest', 'nose lamp inner'],
    ['nose seam top', 'nose lamp inner', 'bonnet front corner'],
    ['bonnet front', 'bonnet front corner', 'bonnet front centre'],
    ['top centre front', 'bonnet front centre', 'nose crest'],
  )
  add(
    'front-lid',
    'saf',
    ['bonnet front', 'bonnet front centre', 'bonnet front corner'],
    ['bonnet side', 'bonnet front corner', 'bonnet rear corner'],
    ['bonnet rear', 'bonnet rear corner', 'bonnet rear centre'],
    ['top centre front', 'bonnet rear centre', 'bonnet front centre'],
  )
  add(
    'air-chamber',
    'saf',
    ['bonnet rear', 'bonnet rear centre', 'bonnet rear corner'],
    ['scuttle side', 'bonnet rear corner', 'screen corner'],
    ['screen foot', 'screen corner', 'screen foot centre'],
    ['top centre front', 'screen foot centre', 'bonnet rear centre'],
  )
}

function cabinFaces({ add }: FaceWork): void {
  add(
    'front-glass-surround',
    'saf',
    ['screen foot', 'screen foot centre', 'screen corner'],
    ['screen edge', 'screen corner', 'gutter front'],
    ['header edge', 'gutter front', 'header'],
    ['screen centre', 'header', 'screen foot centre'],
  )
  add(
    'front-post-upper.L',
    'saf',
    ['post foot', 'screen corner', 'door front top'],
    ['crest', 'door front top', 'frame foot'],
    ['frame front edge', 'frame foot', 'frame front'],
    ['rail front', 'frame front', 'gutter front'],
    ['screen edge', 'gutter front', 'screen corner'],
  )
  add(
    'header strip',
    'saf',
    ['header edge', 'header', 'gutter front'],
    ['gutter', 'gutter front', 'header rear corner'],
    ['header rear edge', 'header rear corner', 'header rear'],
    ['roof centre', 'header rear', 'header'],
  )
  add(
    'roof-skin',
    'saf',
    ['header rear edge', 'header rear', 'header rear corner'],
    ['gutter', 'header rear corner', 'gutter peak'],
    ['roof section', 'gutter peak', 'roof peak'],
    ['roof centre', 'roof peak', 'header rear'],
  )
  add(
    'roof-skin',
    'sab',
    ['roof section', 'roof peak', 'gutter peak'],
    ['gutter', 'gutter peak', 'gutter rear'],
    ['roof rear edge', 'gutter rear', 'roof rear'],
    ['roof centre', 'roof rear', 'roof peak'],
  )
  add(
    'roof-rail.L',
    'saf',
    ['frame top', 'frame front', 'frame peak'],
    ['rail section', 'frame peak', 'gutter peak'],
    ['gutter', 'gutter peak', 'gutter front'],
    ['rail front', 'gutter front', 'frame front'],
  )
  add(
    'roof-rail.L',
    'sab',
    ['frame top', 'frame peak', 'frame rear'],
    ['rail rear', 'frame rear', 'gutter rear'],
    ['gutter', 'gutter rear', 'gutter peak'],
    ['rail section', 'gutter peak', 'frame peak'],
  )
}

function doorFaces({ add, flank, form }: FaceWork): void {
  add(
    'front-door.L',
    'sa',
    ['crest', 'frame foot', 'post front foot'],
    ['post front', 'post front foot', 'post front head'],
    ['frame top', 'post front head', 'frame front'],
    ['frame front edge', 'frame front', 'frame foot'],
  )
  const parts: Readonly<Partial<Record<FlankLine, string>>> = {
    'door rear': 'front-door.L',
    'rear door rear': 'rear-door.L',
    'cab rear': 'cab-corner.L',
  }
  flank.slice(1).forEach((line, index) => {
    const before = flank[index]
    const part = parts[line]
    if (!before || !part) return
    add(
      part,
      'sa',
      ['crest', `${before} top`, `${line} top`],
      [`${line} upper`, `${line} top`, `${line} fullest`],
      ['fullest', `${line} fullest`, `${before} fullest`],
      [`${before} upper`, `${before} fullest`, `${before} top`],
    )
    add(
      part,
      's',
      ['fullest', `${before} fullest`, `${line} fullest`],
      [`${line} lower`, `${line} fullest`, `${line} sill`],
      ['sill top', `${line} sill`, `${before} sill`],
      [`${before} lower`, `${before} sill`, `${before} fullest`],
    )
  })
  const bed = form.description.tail === 'bed'
  add(
    'lower-rail-outer.L',
    's',
    ['sill top', 'front arch sill', bed ? 'cab rear sill' : 'rear arch sill'],
    ...(bed
      ? ([['cab rear sill', 'cab rear sill', 'cab rear foot']] as const)
      : ([['rear arch', 'rear arch sill', 'rear arch ahead foot']] as const)),
    ['foot', bed ? 'cab rear foot' : 'rear arch ahead foot', 'front arch behind foot'],
    ['front arch', 'front arch behind foot', 'front arch sill'],
  )
}
