import type { HatchName, PanelMark, PlanMarks } from '../../shared-types/figure.ts'
import { type PanelDefinition, type PanelState, panelName } from '../../shared-types/panel.ts'
import type { MetalState, NameChoice } from '../../shared-types/words.ts'

/** The hatch of each state of metal. Not inspected is clean: its dotted edge tells it. */
export const hatchOfMetal: { readonly [M in MetalState]: HatchName } = {
  'original metal': 'clean',
  'repaired metal': 'repaired',
  'patch panel': 'patch',
  'replacement skin': 'skin',
  'replacement panel': 'replacement',
  'filler over metal': 'filler-over',
  'filler in place of metal': 'filler-through',
  'not determined': 'undetermined',
  'not inspected': 'clean',
}

/** How each panel of the walk is drawn now; a panel without a row in the record is not inspected. */
export function panelMarks(
  definitions: readonly PanelDefinition[],
  states: readonly PanelState[],
  names: NameChoice,
): PanelMark[] {
  const known = new Map(states.map((state) => [state.panelId, state]))
  return definitions.map((definition) => {
    const state = known.get(definition.id)
    const inspection = state?.inspection ?? 'not inspected'
    const seen = inspection === 'inspected'
    const metal = seen ? (state?.metal ?? 'not inspected') : 'not inspected'
    return {
      panelId: definition.id,
      stop: definition.stop,
      name: panelName(definition, names),
      inspection,
      metal,
      paint: seen ? (state?.paint ?? 'not inspected') : 'not inspected',
      hatch: hatchOfMetal[metal],
      edge: seen ? 'solid' : 'dotted',
      crossed: inspection === 'not accessible',
      word: wordOf(inspection, metal),
    }
  })
}

/** Looked at without a verdict on the metal is not the same as not looked at. */
function wordOf(inspection: PanelMark['inspection'], metal: MetalState): string {
  if (inspection !== 'inspected') return inspection
  return metal === 'not inspected' ? 'looked at, metal not entered' : metal
}

type LegendLine = PlanMarks['legend'][number]
const legendOrder: readonly LegendLine[] = [
  { hatch: 'clean', edge: 'solid', crossed: false, word: 'original metal' },
  { hatch: 'clean', edge: 'solid', crossed: false, word: 'looked at, metal not entered' },
  { hatch: 'repaired', edge: 'solid', crossed: false, word: 'repaired metal' },
  { hatch: 'patch', edge: 'solid', crossed: false, word: 'patch panel' },
  { hatch: 'skin', edge: 'solid', crossed: false, word: 'replacement skin' },
  { hatch: 'replacement', edge: 'solid', crossed: false, word: 'replacement panel' },
  { hatch: 'filler-over', edge: 'solid', crossed: false, word: 'filler over metal' },
  { hatch: 'filler-through', edge: 'solid', crossed: false, word: 'filler in place of metal' },
  { hatch: 'rusted-through', edge: 'solid', crossed: false, word: 'rusted through' },
  { hatch: 'undetermined', edge: 'solid', crossed: false, word: 'not determined' },
  { hatch: 'clean', edge: 'dotted', crossed: false, word: 'not inspected' },
  { hatch: 'clean', edge: 'dotted', crossed: true, word: 'not accessible' },
]

/** Lines of the legend that are in use, in their fixed order; `extents` are the hatches of patches on panels. */
export function legendInUse(panels: readonly PanelMark[], extents: readonly (HatchName | null)[]): LegendLine[] {
  return legendOrder.filter(
    (line) =>
      panels.some((panel) => panel.word === line.word) || (line.hatch !== 'clean' && extents.includes(line.hatch)),
  )
}
