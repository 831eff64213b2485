import { z } from 'zod'
import { type PanelDefinition, type PanelId, type PanelList, panelId } from '../../shared-types/panel.ts'
import { type BodyStyle, bodyStyle, type InspectionLevel, type WalkLayer } from '../../shared-types/words.ts'
import { cautionsNamed } from './cautions.ts'
import { once, readList } from './list-file.ts'
import { panelAreaM2 } from './panel-areas.ts'

/** Areas of the body that the judgement adds up; `side` becomes left or right by the panel's own side. */
export const bodyArea = z.enum([
  'front',
  'left side',
  'right side',
  'roof',
  'rear',
  'openings',
  'engine bay',
  'inside',
  'underneath',
])
export type BodyArea = z.infer<typeof bodyArea>

const frequency = z.enum(['low', 'medium', 'high'])
const phase = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)])
const name = z.string().min(1).max(60)

const panelEntry = z.strictObject({
  id: panelId,
  us: name,
  uk: name,
  namesFor: z.array(z.strictObject({ bodies: z.array(bodyStyle), us: name, uk: name })).optional(),
  sided: z.boolean(),
  phase,
  bodyArea: z.union([bodyArea, z.literal('side')]),
  bodies: z.array(bodyStyle).min(1),
  appliesWhen: z.string().nullable(),
  zones: z.array(z.strictObject({ zone: z.string(), rust: frequency, filler: frequency })),
  access: z.string(),
  look: z.string(),
  structural: z.boolean(),
  cautions: z.array(z.string()),
  gaugeReadable: z.enum(['yes', 'limited', 'no']),
  gaugeUse: z.string(),
  areaM2: z.partialRecord(bodyStyle, z.tuple([z.number().positive(), z.number().positive()])),
})
type PanelEntry = z.infer<typeof panelEntry>

const conditionId = z.string().regex(/^[a-z]+(-[a-z]+)*$/)
const condition = z.strictObject({
  us: name,
  uk: name,
  means: z.string().max(160),
  onOneSide: z.boolean(),
  usually: z.partialRecord(bodyStyle, z.enum(['present', 'L', 'R'])),
})
/** What a condition is called, and how a new record of each body begins with it. */
export type PanelCondition = z.infer<typeof condition>

const panelFile = z.strictObject({
  title: z.string(),
  sourceStatus: z.string(),
  areaNote: z.string(),
  walkNote: z.string(),
  textNote: z.string(),
  conditions: z.record(conditionId, condition),
  panels: z.array(panelEntry),
  walkOrder: z.record(bodyStyle, z.array(panelId)),
})

const read = once(() => {
  const file = readList('panels.json', panelFile)
  return { ...file, byId: new Map(file.panels.map((entry) => [entry.id, entry])) }
})

/** Conditions a record may hold that decide which panels a car has. */
export function panelConditions(): Readonly<Record<string, PanelCondition>> {
  return read().conditions
}

/** Whether a condition decides about a panel of this body. */
export function conditionConcerns(body: BodyStyle, id: string): boolean {
  return read().walkOrder[body].some((panel) => entryOf(panel).appliesWhen === id)
}

/** Whether a condition may be held for one side alone, as `filler-flap.L`. */
export function conditionHasSides(id: string): boolean {
  return read().panels.some((entry) => entry.sided && entry.appliesWhen === id)
}

/** Last phase of the walk that each level of inspection goes to. */
const lastPhase: { readonly [L in InspectionLevel]: PanelDefinition['phase'] } = {
  'outside only': 1,
  'with openings': 2,
  'with inside': 3,
  'with underneath': 4,
}

const layerOfPhase: { readonly [P in PanelDefinition['phase']]: WalkLayer } = {
  1: 'outer',
  2: 'inner',
  3: 'inner',
  4: 'under',
}

const sideOf = (id: PanelId): 'L' | 'R' | null => (id.endsWith('.L') ? 'L' : id.endsWith('.R') ? 'R' : null)

/** A condition holds for both sides (`filler-flap`) or for one (`filler-flap.L`). */
function applies(entry: PanelEntry, side: 'L' | 'R' | null, conditions: readonly string[]): boolean {
  if (entry.appliesWhen === null) return true
  return (
    conditions.includes(entry.appliesWhen) || (side !== null && conditions.includes(`${entry.appliesWhen}.${side}`))
  )
}

function entryOf(id: PanelId): PanelEntry {
  const entry = read().byId.get(id.replace(/\.[LR]$/, ''))
  if (entry === undefined) throw new Error(`The walk names the panel ${id}, which the list does not hold.`)
  return entry
}

/** Body area a panel is added up in; throws for a panel the list does not hold. */
export function bodyAreaOf(id: PanelId): BodyArea {
  const area = entryOf(id).bodyArea
  if (area !== 'side') return area
  return sideOf(id) === 'R' ? 'right side' : 'left side'
}

/**
 * Panels of a body style in walking order. Panels whose condition is not among `conditions` are left out;
 * those the level of inspection does not reach stay in, with `walked` false.
 */
export function panelList(body: BodyStyle, level: InspectionLevel, conditions: readonly string[]): PanelList {
  const order = read().walkOrder[body]
  const present = order.filter((id) => applies(entryOf(id), sideOf(id), conditions))
  return { body, panels: present.map((id, at) => definition(id, body, at + 1, lastPhase[level])) }
}

function definition(id: PanelId, body: BodyStyle, stop: number, last: PanelDefinition['phase']): PanelDefinition {
  const entry = entryOf(id)
  const names = entry.namesFor?.find((other) => other.bodies.includes(body)) ?? entry
  const range = entry.areaM2[body]
  if (range === undefined) throw new Error(`The list gives no area for ${id} of a ${body}.`)
  const measured = panelAreaM2(body, id)
  return {
    id,
    us: names.us,
    uk: names.uk,
    side: sideOf(id),
    phase: entry.phase,
    layer: layerOfPhase[entry.phase],
    stop,
    walked: entry.phase <= last,
    zones: entry.zones,
    access: entry.access,
    look: entry.look,
    structural: entry.structural,
    cautions: cautionsNamed(entry.cautions),
    gaugeReadable: entry.gaugeReadable,
    gaugeUse: entry.gaugeUse,
    areaM2: measured ?? (range[0] + range[1]) / 2,
    areaIsMeasured: measured !== null,
  }
}
