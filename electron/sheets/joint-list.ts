import { z } from 'zod'
import type { GapJoint, Joint } from '../../shared-types/joint.ts'
import { type PanelId, panelId, panelName, withinSentence } from '../../shared-types/panel.ts'
import { type BodyStyle, bodyStyle, jointKind, type NameChoice } from '../../shared-types/words.ts'
import { once, readList } from './list-file.ts'
import { panelConditions, panelList } from './panel-list.ts'

const station = z.enum(['upper', 'middle', 'lower', 'front', 'rear', 'left', 'centre', 'right'])
const word = z.string().min(1).max(60)
const jointEntry = z
  .strictObject({
    id: z.string().regex(/^[a-z-]+\+[a-z-]+$/),
    panels: z.tuple([panelId, panelId]),
    kind: jointKind,
    mayBe: z.array(jointKind),
    side: z.enum(['same', 'each', 'across', 'centre']),
    bodies: z.array(bodyStyle).min(1),
    measureAt: z.array(station).min(1).nullable(),
  })
  .refine(({ id, panels }) => id === panels.toSorted().join('+'), 'the id does not name the two panels in order')

const jointFile = z.strictObject({
  title: z.string(),
  sourceStatus: z.string(),
  sideNote: z.string(),
  gapNote: z.string(),
  kinds: z.record(jointKind, z.strictObject({ uk: word, us: word, means: z.string() })),
  joints: z.array(jointEntry),
})

const read = once(() => {
  const { kinds, joints } = readList('joints.json', jointFile)
  return { kinds, joints, byId: new Map<string, Joint>(joints.map((joint) => [joint.id, joint])) }
})

/** Every joint of a body style, in the order of the list. */
export function jointList(body: BodyStyle): readonly Joint[] {
  return read().joints.filter(({ bodies }) => bodies.includes(body))
}

/** The gaps of a body that are measured, by name: which joint, and where along it. */
export function gapJoints(body: BodyStyle, names: NameChoice): readonly GapJoint[] {
  const { panels } = panelList(body, 'with underneath', Object.keys(panelConditions()))
  const { kinds } = read()
  const nameOf = (base: PanelId) => {
    const found = panels.find(({ id }) => id === base || id === `${base}.L`)
    return withinSentence(found?.[names] ?? base)
  }
  return jointList(body).flatMap(({ id, kind, panels: [one, other], side, measureAt }) =>
    measureAt === null
      ? []
      : [
          {
            id,
            name: `${kinds[kind][names]} between ${nameOf(one)} and ${nameOf(other)}`,
            bothSides: side === 'same' || side === 'each',
            measureAt,
          },
        ],
  )
}

const parted = (id: PanelId): { readonly base: string; readonly side: string | null } => {
  const [base = id, side = null] = id.split('.')
  return { base, side }
}

function sidesMeet(how: Joint['side'], one: string | null, other: string | null): boolean {
  if (how === 'centre') return one === null && other === null
  if (how === 'each') return (one === null) !== (other === null)
  if (one === null || other === null) return false
  return how === 'same' ? one === other : one !== other
}

/** The joint at which two panels of a body meet, in whichever order they are given; null when they do not meet. */
export function jointBetween(one: PanelId, other: PanelId, body: BodyStyle): Joint | null {
  const [first, second] = [parted(one), parted(other)]
  const joint = read().byId.get([first.base, second.base].toSorted().join('+'))
  if (joint === undefined || !joint.bodies.includes(body)) return null
  return sidesMeet(joint.side, first.side, second.side) ? joint : null
}

/**
 * Name of the seam between two panels, as it stands inside a sentence: "shut line between left front door and left
 * front wing". Null when they do not meet.
 */
export function jointName(one: PanelId, other: PanelId, body: BodyStyle, names: NameChoice): string | null {
  const joint = jointBetween(one, other, body)
  if (joint === null) return null
  const { panels } = panelList(body, 'with underneath', Object.keys(panelConditions()))
  const [first, second] = [one, other].map((id) => panels.find((panel) => panel.id === id))
  if (first === undefined || second === undefined) return null
  const named = [first, second].map((panel) => withinSentence(panelName(panel, names)))
  return `${read().kinds[joint.kind][names]} between ${named.join(' and ')}`
}
