import type { CarNumber } from '../../../shared-types/car.ts'
import type { Claim } from '../../../shared-types/claim.ts'
import type { CountedPart, WeighedPanel } from '../../../shared-types/computations.ts'
import type { OpenQuestion } from '../../../shared-types/judgement.ts'

/** What a record holds that can leave a question open. */
export interface Questioned {
  readonly panels: readonly WeighedPanel[]
  readonly parts: readonly CountedPart[]
  readonly claims: readonly Claim[]
  readonly carNumbers: readonly CarNumber[]
  /** Panels with a state in the record that this body does not have. */
  readonly strayPanels: readonly string[]
}

/** Questions the record leaves open, claims first, each with what would settle it. */
export function openQuestions({ panels, parts, claims, carNumbers, strayPanels }: Questioned): readonly OpenQuestion[] {
  const inspected = panels.filter((panel) => panel.inspection === 'inspected')
  return [
    ...claims.filter((claim) => claim.verdict === 'not settled').map(aboutClaim),
    ...carNumbers.filter((number) => number.howRead === 'not looked for').map(aboutNumber),
    ...inspected.filter((panel) => panel.metal === 'filler over metal' && !panel.backSeen).map(aboutFiller),
    ...inspected.filter((panel) => panel.metal === 'not determined').map(aboutMetal),
    ...panels.filter((panel) => panel.inspection === 'not accessible').map(aboutAccess),
    ...aboutPaint(inspected.filter((panel) => panel.paint === 'not determined')),
    ...parts.filter((part) => part.state === 'not determined').map(aboutPart),
    ...strayPanels.map(aboutStray),
  ]
}

const aboutClaim = (claim: Claim): OpenQuestion => ({
  text: `C ${claim.number}, “${claim.words}”: not settled.`,
  references: [{ kind: 'claim', key: String(claim.number) }],
  wouldSettle: claim.wouldSettle.trim() === '' ? 'Not noted yet.' : claim.wouldSettle,
})

const aboutNumber = (number: CarNumber): OpenQuestion => ({
  text: `${number.kind}: not looked for.`,
  references: [{ kind: 'carNumber', key: String(number.number) }],
  wouldSettle: 'Read it character by character and photograph it, square-on and in raking light.',
})

const panelReference = (panel: WeighedPanel) => [{ kind: 'panel', key: panel.id }] as const

const aboutFiller = (panel: WeighedPanel): OpenQuestion => ({
  text: `${panel.label}: what lies under the filler?`,
  references: panelReference(panel),
  wouldSettle: 'Sight of the back, by eye or borescope, or a magnet in cloth laid on it.',
})

const aboutMetal = (panel: WeighedPanel): OpenQuestion => ({
  text: `${panel.label}: metal not determined.`,
  references: panelReference(panel),
  wouldSettle: 'Seams, edges and fastenings against the other side of the car, and the back where it can be seen.',
})

const aboutAccess = (panel: WeighedPanel): OpenQuestion => ({
  text: `${panel.label}: not accessible, ${panel.reason}.`,
  references: panelReference(panel),
  wouldSettle: 'Access to it, with the owner’s leave.',
})

function aboutPaint(panels: readonly WeighedPanel[]): readonly OpenQuestion[] {
  if (panels.length === 0) return []
  return [
    {
      text: `Paint not determined: ${panels.map((panel) => panel.label).join(', ')}.`,
      references: panels.flatMap(panelReference),
      wouldSettle: 'Coating readings over each panel, and the colour in places nobody polishes or sprays.',
    },
  ]
}

const aboutPart = (part: CountedPart): OpenQuestion => ({
  text: `${part.label}: not determined.`,
  references: [{ kind: 'part', key: part.id }],
  wouldSettle: 'Its numbers, dates and marks, read and photographed.',
})

const aboutStray = (panelId: string): OpenQuestion => ({
  text: `A state is noted for the panel “${panelId}”, which this body does not have; it is counted nowhere.`,
  references: [{ kind: 'panel', key: panelId }],
  wouldSettle: 'The body and its conditions under the particulars, put right.',
})
