import { z } from 'zod'
import type { Caution } from './caution.ts'
import { instant, noteText } from './units.ts'
import { type BodyStyle, inspectionState, metalState, type NameChoice, paintState, type WalkLayer } from './words.ts'

/** Neutral panel id with side, such as `front-side.L` or `roof-skin`. */
export const panelId = z
  .string()
  .regex(/^[a-z]+(-[a-z]+)*(\.[LR])?$/)
  .max(60)
export type PanelId = z.infer<typeof panelId>

/** What is known of one panel of this car; keyed by `panelId`. A panel without a row is not inspected. */
export const panelState = z.strictObject({
  panelId,
  inspection: inspectionState,
  /** Why the panel could not be reached; required when not accessible. */
  reason: noteText,
  metal: metalState,
  paint: paintState,
  /** True only after the explicit act "inspected and nothing found". */
  nothingFound: z.boolean(),
  /** The back of the panel was seen, by eye or borescope. */
  backSeen: z.boolean(),
  /** A magnet in cloth found no pull there. */
  magnetVoid: z.boolean(),
  note: noteText,
  changedAt: instant,
})
export type PanelState = z.infer<typeof panelState>

/** How often rust or filler is found at a zone: trade knowledge, recalled, ordinal, no probability. */
export type ZoneFrequency = 'low' | 'medium' | 'high'

/** One panel instance of one body style, as the plan and the walk know it. Reference data, not part of a record. */
export interface PanelDefinition {
  readonly id: PanelId
  readonly us: string
  readonly uk: string
  readonly side: 'L' | 'R' | null
  /** 1 outside, 2 openings, 3 inside, 4 underneath. */
  readonly phase: 1 | 2 | 3 | 4
  readonly layer: WalkLayer
  /** Position in walking order, from 1; panels whose condition is false are left out beforehand. */
  readonly stop: number
  /** False when the level of inspection leaves this stop out of the walk. */
  readonly walked: boolean
  readonly zones: readonly { readonly zone: string; readonly rust: ZoneFrequency; readonly filler: ZoneFrequency }[]
  readonly access: string
  readonly look: string
  readonly structural: boolean
  readonly cautions: readonly Caution[]
  readonly gaugeReadable: 'yes' | 'limited' | 'no'
  readonly gaugeUse: string
  /** Developed outer surface in square metres: the plan's own area, else the middle of the plausible range. */
  readonly areaM2: number
  readonly areaIsMeasured: boolean
}

/** Something only some cars have; it decides which panels a car has. Kept by a record as its id, or `id.L`, `id.R`. */
export interface CarFeature {
  readonly id: string
  readonly us: string
  readonly uk: string
  /** A line under the name; empty where the name says all. */
  readonly means: string
  /** True when it is on one side or the other, and the record keeps which. */
  readonly onOneSide: boolean
  /** As a new record of this body begins: left out, there, or on one side. */
  readonly usually: 'absent' | 'present' | 'L' | 'R'
}

/** Panels of a body style in walking order. */
export interface PanelList {
  readonly body: BodyStyle
  readonly panels: readonly PanelDefinition[]
}

/** "Front wing" inside a sentence: "front wing"; "A-post, upper" keeps its letter. */
export const withinSentence = (name: string): string =>
  /^.[a-zà-ÿ]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name

/** Name of a panel as printed everywhere, in sentence case with its side: "Left front wing", "Roof panel", "Left A-post, upper". */
export function panelName(definition: Pick<PanelDefinition, 'us' | 'uk' | 'side'>, names: NameChoice): string {
  if (definition.side === null) return definition[names]
  return `${definition.side === 'L' ? 'Left' : 'Right'} ${withinSentence(definition[names])}`
}

/** A text of the panel list with each `{panel-id}` replaced by that panel's name in the chosen English, without its side. */
export function textWithPanelNames(
  text: string,
  panels: readonly Pick<PanelDefinition, 'id' | 'us' | 'uk'>[],
  names: NameChoice,
): string {
  return text.replace(/\{([a-z-]+)\}/g, (_, id: string) => {
    const definition = panels.find((panel) => panel.id === id || panel.id === `${id}.L`)
    return definition === undefined ? id.replaceAll('-', ' ') : withinSentence(definition[names])
  })
}
