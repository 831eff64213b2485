import type { CountedPart, WeighedPanel } from '../../../shared-types/computations.ts'
import type { NarrowedRange, WouldNarrow } from '../../../shared-types/judgement.ts'
import type { Weighing } from './own-weights.ts'
import { partStanding } from './parts.ts'
import { type Standing, shareBounds, type Weighed } from './shares.ts'
import { panelStanding } from './surfaces.ts'

/** A thing that is open in one range or more. */
interface Open {
  readonly about: Pick<WouldNarrow, 'reference' | 'label' | 'how'>
  readonly narrows: readonly NarrowedRange[]
}

/** What is added up in one range: its things with their weights. */
interface Added<Thing> {
  readonly range: NarrowedRange['range']
  readonly things: readonly (Weighed & { readonly thing: Thing })[]
}

/**
 * Everything that was not settled, by how much it keeps the ranges open: what settling it alone would leave of each range,
 * whichever way it comes out. The ranges are linear in the weights, so the figures are exact. Greatest narrowing of any one
 * range first, then of all ranges.
 */
export function wouldNarrow(
  panels: readonly WeighedPanel[],
  parts: readonly CountedPart[],
  weighs: Weighing,
): readonly WouldNarrow[] {
  const surface = (question: 'metal' | 'paint'): Added<WeighedPanel> => ({
    range: question === 'metal' ? 'original metal' : 'factory finish',
    things: panels.map((thing) => ({
      thing,
      weight: thing.areaM2 * weighs.panel(thing).factor,
      standing: panelStanding(thing, question),
    })),
  })
  const counted: Added<CountedPart> = {
    range: 'parts',
    things: parts
      .filter(({ leftOut }) => leftOut === null)
      .map((thing) => ({ thing, weight: weighs.part(thing).factor, standing: partStanding(thing) })),
  }
  const ofPanels = openOf([surface('metal'), surface('paint')], (panel) => ({
    reference: { kind: 'panel', key: panel.id },
    label: panel.label,
    how: howToLook(panel),
  }))
  const ofParts = openOf([counted], (part) => ({
    reference: { kind: 'part', key: part.id },
    label: part.label,
    how: part.state === 'not seen' ? 'not seen yet' : 'not determined: its numbers, dates and marks',
  }))
  return [...ofPanels, ...ofParts]
    .map(({ about, narrows }) => ({
      ...about,
      narrows,
      mostPoints: Math.max(...narrows.map(({ points }) => points)),
      allPoints: narrows.reduce((sum, { points }) => sum + points, 0),
    }))
    .sort((one, other) => other.mostPoints - one.mostPoints || other.allPoints - one.allPoints)
    .map(({ allPoints: _, ...thing }) => thing)
}

function openOf<Thing extends { readonly id: string }>(
  ranges: readonly Added<Thing>[],
  about: (thing: Thing) => Open['about'],
): readonly Open[] {
  const open = new Map<string, { readonly thing: Thing; readonly narrows: NarrowedRange[] }>()
  for (const { range, things } of ranges) {
    const now = shareBounds(things)
    for (const { thing, weight, standing } of things) {
      if (standing !== 'open') continue
      const settled = (as: Standing) =>
        shareBounds(things.map((each) => (each.thing === thing ? { weight, standing: as } : each)))
      const ifYes = settled('yes')
      const found = open.get(thing.id) ?? { thing, narrows: [] }
      const points = now.highPercent - now.lowPercent - (ifYes.highPercent - ifYes.lowPercent)
      found.narrows.push({ range, points, now, ifYes, ifNo: settled('no') })
      open.set(thing.id, found)
    }
  }
  return [...open.values()].map(({ thing, narrows }) => ({ about: about(thing), narrows }))
}

function howToLook(panel: WeighedPanel): string {
  if (panel.inspection === 'not accessible') return `not accessible, ${panel.reason}: by another way`
  if (panel.inspection === 'not inspected') return panel.walked ? 'not looked at yet' : 'left out by the level'
  if (panel.metal === 'filler over metal' && !panel.backSeen) return 'filler seen from the front only: from behind'
  if (panelStanding(panel, 'metal') === 'open') return 'metal not determined: seams, edges and the back'
  return 'paint not determined: coating readings, and the colour in hidden places'
}
