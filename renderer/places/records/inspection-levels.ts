import type { InspectionLevel, IntrusiveStep } from '../../../shared-types/words.ts'

/** What a level of inspection includes and leaves out, said before it is chosen. */
export interface LevelWords {
  readonly level: InspectionLevel
  readonly name: string
  readonly includes: string
  readonly leavesOut: string
}

export const levelWords: readonly LevelWords[] = [
  {
    level: 'outside only',
    name: 'Outside only',
    includes: 'Every outer panel, glass and outside part that is seen standing round the closed car.',
    leavesOut: 'Door and lid openings, engine bay, inside and underneath stay not inspected, and the report says so.',
  },
  {
    level: 'with openings',
    name: 'With openings',
    includes: 'The outside, then doors, bonnet and boot opened: edges, shuts, hinge pillars, engine bay.',
    leavesOut: 'Inside trim and floor, and everything underneath, stay not inspected.',
  },
  {
    level: 'with inside',
    name: 'With inside',
    includes: 'Outside and openings, then the inside: floor from above, pillars, instruments, seats, trim.',
    leavesOut: 'Everything underneath stays not inspected.',
  },
  {
    level: 'with underneath',
    name: 'With underneath',
    includes: 'The whole walk: outside, openings, inside, and underneath with the car properly supported.',
    leavesOut: 'Only what cannot be reached stays not accessible, each such panel with its reason.',
  },
]

/** What each intrusive step does to the car, in words an owner can say yes or no to. */
export const stepWords: { readonly [S in IntrusiveStep]: string } = {
  'lift the car': 'Raise it and stand it on supports, to look underneath.',
  unscrew: 'Undo fastenings to look behind trim, covers and panels, and put them back.',
  wipe: 'Wipe dirt from numbers, seams and surfaces.',
  borescope: 'Put an inspection camera through existing holes.',
  'pour water': 'Pour a little water to find leaks and drains.',
  'connect a battery': 'Connect a battery to try the electrics.',
  'start the engine': 'Start and run the engine.',
  drive: 'Drive it.',
  'take a paint sample': 'Cut a small paint sample down to the metal, at a place agreed beforehand.',
}
