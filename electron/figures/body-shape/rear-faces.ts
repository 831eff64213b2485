import type { FaceWork } from './face.ts'
import { ends, type Point3, toward } from './space.ts'

/** Behind the cabin of a car with a boot: side windows, last post, rear screen, deck, lid, wings, tail. */
export function deckFaces(work: FaceWork): void {
  const { add } = work
  windowFaces(work)
  rearWing(work, 'rear-side.L')
  const last = work.windows.at(-1) ?? 'post front'
  add(
    'rear-post.L',
    'sab',
    ['crest', `${last} foot`, 'rear post top of wing'],
    ['rear post foot', 'rear post top of wing', 'rear corner'],
    ['rear edge', 'rear corner', 'gutter rear'],
    ['rail rear', 'gutter rear', 'frame rear'],
    [last, 'frame rear', `${last} foot`],
  )
  add(
    'rear-glass-surround',
    'sab',
    ['rear screen foot', 'rear screen foot centre', 'rear corner'],
    ['rear edge', 'rear corner', 'gutter rear'],
    ['roof rear edge', 'gutter rear', 'roof rear'],
    ['rear centre', 'roof rear', 'rear screen foot centre'],
  )
  add(
    'rear-deck-panel',
    'sab',
    ['rear screen foot', 'rear corner', 'rear screen foot centre'],
    ['top centre rear', 'rear screen foot centre', 'lid front centre'],
    ['lid front', 'lid front centre', 'lid front corner'],
    ['deck side', 'lid front corner', 'rear corner'],
  )
  add(
    'rear-lid',
    'sab',
    ['lid front', 'lid front corner', 'lid front centre'],
    ['top centre rear', 'lid front centre', 'tail crest'],
    ['crest', 'tail crest', 'tail lid'],
    ['lid side', 'tail lid', 'lid front corner'],
  )
  add(
    'rear-side.L',
    'sab',
    ['crest', 'rear post top of wing', 'tail lid'],
    ['lid side', 'tail lid', 'lid front corner'],
    ['deck side', 'lid front corner', 'rear corner'],
    ['rear post foot', 'rear corner', 'rear post top of wing'],
  )
  tailFaces(work, 'rear-lid')
}

/** Behind the cabin of an estate or van: side windows or load side, last post, tail door or load doors. */
export function uprightFaces(work: FaceWork): void {
  const { add, form } = work
  const van = form.body === 'van'
  windowFaces(work)
  rearWing(work, van ? 'cargo-side.L' : 'rear-side.L')
  const last = work.windows.at(-1) ?? 'post front'
  add(
    'last-post.L',
    'sab',
    ['crest', `${last} foot`, 'tail lid'],
    ['rear edge', 'tail lid', 'gutter rear'],
    ['rail rear', 'gutter rear', 'frame rear'],
    [last, 'frame rear', `${last} foot`],
  )
  add(
    'rear-roof-rail',
    'sab',
    ['roof rear edge', 'roof rear', 'gutter rear'],
    ['rear edge', 'gutter rear', 'rear rail corner'],
    ['rear rail', 'rear rail corner', 'rear rail centre'],
    ['rear centre', 'rear rail centre', 'roof rear'],
  )
  const door = van ? 'rear-cargo-door.L' : 'tail-door'
  add(
    door,
    'sab',
    ['rear rail', 'rear rail centre', 'rear rail corner'],
    ['rear edge', 'rear rail corner', 'tail lid'],
    ['crest', 'tail lid', 'tail crest'],
    ['rear centre', 'tail crest', 'rear rail centre'],
  )
  tailFaces(work, van ? door : 'tail door below')
}

/** Behind the cabin of a pickup: back of the cab, sides of the bed with their rails, tail door, the open bed. */
export function bedFaces(work: FaceWork): void {
  const { add, net, form } = work
  bedLines(work)
  add(
    'mid-post-upper.L',
    'sa',
    ['crest', 'post front foot', 'cab rear top'],
    ['cab edge', 'cab rear top', 'gutter rear'],
    ['rail rear', 'gutter rear', 'frame rear'],
    ['frame top', 'frame rear', 'post front head'],
    ['post front', 'post front head', 'post front foot'],
  )
  add(
    'cab-back',
    'ab',
    ['cab edge', 'gutter rear', 'cab rear top'],
    ['cab foot', 'cab rear top', 'cab foot centre'],
    ['cab centre', 'cab foot centre', 'roof rear'],
    ['roof rear edge', 'roof rear', 'gutter rear'],
  )
  rearWing(work, 'bed-side.L')
  add(
    'bed-side.L',
    'ab',
    ['crest', 'cab rear top', 'tail lamp inner'],
    ['tail door top', 'tail lamp inner', 'bed corner'],
    ['bed inner side', 'bed corner', 'bed front corner'],
    ['cab foot', 'bed front corner', 'cab rear top'],
  )
  add(
    'bed-tail-door',
    'ab',
    ['crest', 'tail crest', 'tail lamp inner'],
    ['tail door top', 'tail lamp inner', 'bed corner'],
    ['bed inner tail', 'bed corner', 'bed inner centre'],
    ['tail door centre', 'bed inner centre', 'tail crest'],
  )
  add(
    'open bed',
    'ab',
    ['cab foot', 'cab foot centre', 'bed front corner'],
    ['bed inner side', 'bed front corner', 'bed corner'],
    ['bed inner tail', 'bed corner', 'bed inner centre'],
    ['bed centre', 'bed inner centre', 'cab foot centre'],
  )
  add(
    'bed-tail-door',
    'sab',
    ['crest', 'tail crest', 'tail lamp inner'],
    ['tail lamp inside', 'tail lamp inner', 'tail lamp foot'],
    ['tail seam upper', 'tail lamp foot', 'tail seam fullest'],
    ['fullest', 'tail seam fullest', 'tail fullest'],
    ['tail centre', 'tail fullest', 'tail crest'],
  )
  lowerTail(work, 'bed-tail-door')
  if (!net.hasNode('bed corner') || form.description.tail !== 'bed') throw new Error('A bed needs its lines.')
}

/** Rail of the bed: a hand's breadth inside the crest, at its height. */
function bedLines({ net, form }: FaceWork): void {
  const { lower } = form
  const breadth = lower.halfWidthMm * 0.08
  const cab = net.node('cab rear top')
  const share = breadth / cab[1]
  net.mark('cab foot', 'bed front corner', share)
  const front = net.node('bed front corner')
  const corner = net.node('tail lamp inner')
  const inner: Point3 = [corner[0] - breadth * 0.7, front[1], corner[2]]
  const height = (x: number) => lower.crest(lower.roundAt('crest', x))[2]
  net.link(
    'bed inner side',
    'bed front corner',
    'bed corner',
    ends(front, inner, (t) => {
      const [x, y] = toward(front, inner, t)
      return [x, y, height(x)]
    }),
  )
  net.link('tail door top', 'tail lamp inner', 'bed corner', (t) => toward(corner, inner, t))
  const tail = net.node('tail crest')
  const centre: Point3 = [tail[0] - breadth * 0.6, 0, tail[2]]
  net.link('bed inner tail', 'bed corner', 'bed inner centre', (t) => {
    const [, y, z] = toward(inner, centre, t)
    return [centre[0] + (inner[0] - centre[0]) * (1 - t) ** 2, y, z]
  })
  net.link('tail door centre', 'bed inner centre', 'tail crest', (t) => toward(centre, tail, t), true)
  net.link(
    'bed centre',
    'bed inner centre',
    'cab foot centre',
    (t) => toward(centre, net.node('cab foot centre'), t),
    true,
  )
}

/** Faces between the upright lines of the side windows. */
function windowFaces({ add, windows, form }: FaceWork): void {
  const before: Readonly<Record<string, string>> = {
    'post rear': 'mid-post-upper.L',
    'rear door frame': 'rear-door.L',
    'rear post rear': 'rear-post.L',
    'side glass rear': form.body === 'van' ? 'cargo-side.L' : 'side-glass-surround.L',
  }
  windows.slice(1).forEach((line, index) => {
    const ahead = windows[index]
    if (!ahead) return
    const last = index === windows.length - 2
    const part = before[line] ?? ''
    add(
      part,
      'sa',
      ['crest', `${ahead} foot`, `${line} foot`],
      [line, `${line} foot`, last ? 'frame rear' : `${line} head`],
      ['frame top', last ? 'frame rear' : `${line} head`, `${ahead} head`],
      [ahead, `${ahead} head`, `${ahead} foot`],
    )
  })
}

/** Flank round the rear wheel, and the lamp housing behind it. */
function rearWing({ add, flank, form }: FaceWork, part: string): void {
  const ahead = flank.at(-1) ?? 'door rear'
  const bed = form.description.tail === 'bed'
  const behind = `${part} behind the wheel`
  add(
    part,
    'sa',
    ['crest', `${ahead} top`, 'rear arch crest'],
    ['rear arch section', 'rear arch crest', 'rear arch top'],
    ['rear arch', 'rear arch top', 'rear arch ahead fullest'],
    ['fullest', 'rear arch ahead fullest', `${ahead} fullest`],
    [`${ahead} upper`, `${ahead} fullest`, `${ahead} top`],
  )
  if (bed) {
    add(
      part,
      's',
      ['fullest', `${ahead} fullest`, 'rear arch ahead fullest'],
      ['rear arch', 'rear arch ahead fullest', 'rear arch ahead foot'],
      ['foot', 'rear arch ahead foot', 'cab rear foot'],
      ['cab rear sill', 'cab rear foot', 'cab rear sill'],
      [`${ahead} lower`, `${ahead} sill`, `${ahead} fullest`],
    )
  } else {
    add(
      part,
      's',
      ['fullest', `${ahead} fullest`, 'rear arch ahead fullest'],
      ['rear arch', 'rear arch ahead fullest', 'rear arch sill'],
      ['sill top', 'rear arch sill', `${ahead} sill`],
      [`${ahead} lower`, `${ahead} sill`, `${ahead} fullest`],
    )
  }
  add(
    behind,
    'sab',
    ['crest', 'rear arch crest', 'tail lamp outer'],
    ['tail lamp outside', 'tail lamp outer', 'tail lamp foot'],
    ['tail seam upper', 'tail lamp foot', 'tail seam fullest'],
    ['fullest', 'tail seam fullest', 'rear arch behind fullest'],
    ['rear arch', 'rear arch behind fullest', 'rear arch top'],
    ['rear arch section', 'rear arch top', 'rear arch crest'],
  )
  add(
    behind,
    'sb',
    ['fullest', 'rear arch behind fullest', 'tail seam fullest'],
    ['tail seam lower', 'tail seam fullest', 'tail seam foot'],
    ['foot', 'tail seam foot', 'rear arch behind foot'],
    ['rear arch', 'rear arch behind foot', 'rear arch behind fullest'],
  )
  add(
    'rear-lamp-housing.L',
    'sab',
    ['crest', 'tail lamp outer', 'tail lamp inner'],
    ['tail lamp inside', 'tail lamp inner', 'tail lamp foot'],
    ['tail lamp outside', 'tail lamp foot', 'tail lamp outer'],
  )
}

/** Tail below the crest: what opens, the panel round it, the apron. */
function tailFaces(work: FaceWork, opening: string): void {
  const { add } = work
  add(
    opening,
    'sab',
    ['crest', 'tail crest', 'tail lid'],
    ['tail lid side', 'tail lid', 'tail lid foot'],
    ['tail lid edge', 'tail lid foot', 'tail lid centre'],
    ['tail centre', 'tail lid centre', 'tail crest'],
  )
  add(
    'tail-panel',
    'sab',
    ['crest', 'tail lid', 'tail lamp inner'],
    ['tail lamp inside', 'tail lamp inner', 'tail lamp foot'],
    ['tail seam upper', 'tail lamp foot', 'tail seam fullest'],
    ['fullest', 'tail seam fullest', 'tail fullest'],
    ['tail centre', 'tail fullest', 'tail lid centre'],
    ['tail lid edge', 'tail lid centre', 'tail lid foot'],
    ['tail lid side', 'tail lid foot', 'tail lid'],
  )
  lowerTail(work, 'rear-apron')
}

function lowerTail({ add }: FaceWork, part: string): void {
  add(
    part,
    'sb',
    ['fullest', 'tail fullest', 'tail seam fullest'],
    ['tail seam lower', 'tail seam fullest', 'tail seam foot'],
    ['foot', 'tail seam foot', 'tail foot'],
    ['tail centre', 'tail foot', 'tail fullest'],
  )
}
