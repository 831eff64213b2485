import type { ShownQuantity } from '../../../shared-types/coating-measures.ts'
import type { WeighedPanel } from '../../../shared-types/computations.ts'
import type { AreaJudgement, Because, SentenceSort } from '../../../shared-types/judgement.ts'
import { type MetalState, metalState, type PaintState, paintState } from '../../../shared-types/words.ts'
import { factorWords, type Weighing, weightSource } from './own-weights.ts'
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

function panelLine(panel: WeighedPanel, question: Question, { weighs, surface }: Judging): Because {
  const state = inWords(panel, question)
  const weight = weighs.panel(panel)
  const times = weight.factor === 1 ? '' : ` × ${factorWords(weight.factor)}`
  const sources = [panel.areaIsMeasured ? null : 'area: middle of the usual range, recalled', weightSource(weight)]
  return {
    text: `${panel.label}, ${surface.text(panel.areaM2)}${times}: ${state}; ${countsAs[panelStanding(panel, question)]}.`,
    sort: sortOf(panel, question),
    references: [{ kind: 'panel', key: panel.id }],
    source: sources.filter((source) => source !== null).join('; ') || null,
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

/** What surfaces are judged by: the weights the user set, and how an area is told. */
export interface Judging {
  readonly weighs: Weighing
  readonly surface: ShownQuantity
}

/**
 * Adds up the surfaces of some panels, each times the user's weight. A panel counts whole: one with a patch is not a panel
 * of original metal. The areas and the shares of the states stay what they are, whatever a panel weighs.
 */
export function judgeSurfaces(
  id: string,
  label: string,
  panels: readonly WeighedPanel[],
  judging: Judging,
): AreaJudgement {
  const { weighs } = judging
  const area = (some: readonly WeighedPanel[]) => some.reduce((total, panel) => total + panel.areaM2, 0)
  const weightOf = (panel: WeighedPanel) => panel.areaM2 * weighs.panel(panel).factor
  const seen = panels.filter((panel) => panel.inspection === 'inspected')
  const judged = (question: Question) =>
    shareRange(
      panels.map((panel) => ({ weight: weightOf(panel), standing: panelStanding(panel, question) })),
      {
        id: `${id}/${questions[question].id}`,
        label: questions[question].label,
        basis: basisOf(panels, judging),
        because: [
          totalLine(panels, question, judging),
          ...panels
            .toSorted((one, other) => weightOf(other) - weightOf(one))
            .flatMap((panel) => chain(panel, question, judging)),
        ],
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

/** Heaviest first, so that the first lines of a chain carry most of it. */
const chain = (panel: WeighedPanel, question: Question, judging: Judging): readonly Because[] => [
  panelLine(panel, question, judging),
  ...(panel.inspection === 'inspected' ? findingLines(panel) : []),
]

/** Area of some panels, and what it comes to times the user's weights; the same where none is set. */
function addedUp(panels: readonly WeighedPanel[], weighs: Weighing) {
  return {
    areaM2: panels.reduce((total, panel) => total + panel.areaM2, 0),
    weight: panels.reduce((total, panel) => total + panel.areaM2 * weighs.panel(panel).factor, 0),
    weighed: panels.some((panel) => weighs.panel(panel).factor !== 1),
  }
}

function basisOf(panels: readonly WeighedPanel[], { weighs, surface }: Judging): string {
  const { areaM2, weight, weighed } = addedUp(panels, weighs)
  const recalled = panels.filter((panel) => !panel.areaIsMeasured).length
  const doubt = recalled === 0 ? '' : `, ${recalled} of ${panels.length} areas not measured`
  const by = weighed ? `by area, weighed, ${surface.text(areaM2)} as ${surface.figure(weight)}` : null
  return `${by ?? `by area, ${surface.text(areaM2)}`}${doubt}`
}

function totalLine(panels: readonly WeighedPanel[], question: Question, { weighs, surface }: Judging): Because {
  const { areaM2, weight, weighed } = addedUp(panels, weighs)
  const whole = weighed
    ? `${surface.text(areaM2)}, counted by the weights set as ${surface.figure(weight)}`
    : surface.text(areaM2)
  const of = (standing: Standing) => {
    const some = panels.filter((panel) => panelStanding(panel, question) === standing)
    const size = addedUp(some, weighs).weight
    return weighed ? surface.figure(size) : surface.text(size)
  }
  return {
    text: `Of ${whole}, ${of('yes')} count as original, ${of('no')} as not original and ${of('open')} may be either.`,
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
