import type { FaceWork } from './face.ts'
import { lowerTail, rearWing } from './rear-faces.ts'
import { ends, type Point3, toward } from './space.ts'

/** Behind the cabin of a pickup: back of the cab, sides of the bed with their rails, tail door, the open bed. */
export function bedFaces(work: FaceWork): void {
  const { add } = work
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
