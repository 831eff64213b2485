import type { WeighedPanel } from '../../../shared-types/computations.ts'
import type { AreaJudgement, Because, SentenceSort } from '../../../shared-types/judgement.ts'
import { type MetalState, metalState, type PaintState, paintState } from '../../../shared-types/words.ts'
import { type Standing, shareRange, stateShares } from './shares.ts'

const metalStanding: { readonly [M in MetalState]: Standing } = {
  'original metal': 'yes',
  'repaired metal': 'no',
  'patch panel': 'no',
  'replacement skin': 'no',
  'replacement panel': 'no',
  // Filler hides whose metal is under it.
  'filler over metal': 'open',
  'filler in place of metal': 'no',
  'not determined': 'open',
  'not inspected': 'open',
}

const paintStanding: { readonly [P in PaintState]: Standing } = {
  'factory finish': 'yes',
  refinished: 'no',
  stripped: 'no',
  'not determined': 'open',
  'not inspected': 'open',
}

const questions = {
  metal: { states: metalState.options, standing: metalStanding, id: 'original-metal', label: 'Original metal' },
  paint: { states: paintState.options, standing: paintStanding, id: 'factory-paint', label: 'Factory finish' },
} as const
type Question = keyof typeof questions

/** A panel nobody has looked at answers nothing, whatever its row says. */
export const panelStanding = (panel: WeighedPanel, question: Question): Standing => {
  if (panel.inspection !== 'inspected') return 'open'
  return question === 'metal' ? metalStanding[panel.metal] : paintStanding[panel.paint]
}

function sortOf(panel: WeighedPanel, question: Question): SentenceSort {
  if (panel.inspection !== 'inspected') return panel.inspection
  const state = panel[question]
  return state === 'not determined' || state === 'not inspected' ? state : 'seen'
}

const countsAs = { yes: 'counts as original', no: 'counts as not original', open: 'may be either' } as const

function inWords(panel: WeighedPanel, question: Question): string {
  if (panel.inspection === 'not accessible') return `not accessible (${panel.reason})`
  if (panel.inspection === 'not inspected') return 'not inspected'
  const state = panel[question]
  return state === 'not determined' || state === 'not inspected' ? `${question} ${state}` : state
}

function panelLine(panel: WeighedPanel, question: Question): Because {
  const state = inWords(panel, question)
  return {
    text: `${panel.label}, ${panel.areaM2.toFixed(2)} m²: ${state}; ${countsAs[panelStanding(panel, question)]}.`,
    sort: sortOf(panel, question),
    references: [{ kind: 'panel', key: panel.id }],
    source: panel.areaIsMeasured ? null : 'area: middle of the usual range, recalled',
  }
}

const findingLines = (panel: WeighedPanel): readonly Because[] =>
  panel.findings.map((finding) => ({
    text: finding.text,
    sort: finding.learned,
    references: [
      { kind: 'finding', key: String(finding.number) },
      ...finding.exhibits.map((number) => ({ kind: 'exhibit', key: String(number) }) as const),
    ],
    source: null,
  }))

/** Adds up the surfaces of some panels. A panel counts whole: one with a patch is not a panel of original metal. */
export function judgeSurfaces(id: string, label: string, panels: readonly WeighedPanel[]): AreaJudgement {
  const area = (some: readonly WeighedPanel[]) => some.reduce((total, panel) => total + panel.areaM2, 0)
  const seen = panels.filter((panel) => panel.inspection === 'inspected')
  const judged = (question: Question) =>
    shareRange(
      panels.map((panel) => ({ weight: panel.areaM2, standing: panelStanding(panel, question) })),
      {
        id: `${id}/${questions[question].id}`,
        label: questions[question].label,
        basis: basisOf(panels, area(panels)),
        because: [totalLine(panels, question, area), ...byWeight(panels).flatMap((panel) => chain(panel, question))],
      },
    )
  return {
    id,
    label,
    areaM2: area(panels),
    seenAreaM2: area(seen),
    panels: panels.length,
    panelsSeen: seen.length,
    metal: shares(panels, metalState.options, (panel) => panel.metal),
    paint: shares(panels, paintState.options, (panel) => panel.paint),
    originalMetal: judged('metal'),
    factoryPaint: judged('paint'),
  }
}

const chain = (panel: WeighedPanel, question: Question): readonly Because[] => [
  panelLine(panel, question),
  ...(panel.inspection === 'inspected' ? findingLines(panel) : []),
]

/** Greatest first, so that the first lines of a chain carry most of it. */
const byWeight = (panels: readonly WeighedPanel[]): readonly WeighedPanel[] =>
  panels.toSorted((one, other) => other.areaM2 - one.areaM2)

function basisOf(panels: readonly WeighedPanel[], areaM2: number): string {
  const recalled = panels.filter((panel) => !panel.areaIsMeasured).length
  const doubt = recalled === 0 ? '' : `, ${recalled} of ${panels.length} areas not measured`
  return `by area, ${areaM2.toFixed(2)} m²${doubt}`
}

function totalLine(
  panels: readonly WeighedPanel[],
  question: Question,
  area: (some: readonly WeighedPanel[]) => number,
): Because {
  const of = (standing: Standing) =>
    area(panels.filter((panel) => panelStanding(panel, question) === standing)).toFixed(2)
  return {
    text: `Of ${area(panels).toFixed(2)} m², ${of('yes')} m² count as original, ${of('no')} m² as not original and ${of('open')} m² may be either.`,
    sort: 'computed',
    references: [],
    source: null,
  }
}

const open = ['not determined', 'not inspected'] as const
function shares<State extends string>(
  panels: readonly WeighedPanel[],
  states: readonly (State | (typeof open)[number])[],
  stateOf: (panel: WeighedPanel) => State | (typeof open)[number],
) {
  const surfaces = panels.map((panel) => ({
    areaM2: panel.areaM2,
    state: panel.inspection === 'inspected' ? stateOf(panel) : ('not inspected' as const),
  }))
  return stateShares(surfaces, states, open)
}
