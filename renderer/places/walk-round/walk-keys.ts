import type { TellView } from '../../../shared-types/identity-view.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { wholeSheet } from '../../drawing/plan-scale.ts'
import type { KeyBinding } from '../../parts-of-page/key-registry.ts'
import { act } from './act.ts'
import { enter, panBy, turnTable, turnTo, useWalkStore, zoomBy } from './walk-store.ts'

const PAN_MM = 300
const sheetOrder = ['outside', 'openings', 'bay', 'floor', 'under'] as const
const sheetWords = ['outside', 'openings', 'engine bay', 'inside', 'underneath'] as const

const tellPlaces = [0, 1, 2, 3, 4, 5, 6, 7, 8]

/** Tells that are looked for on a panel, as far as they are known already. */
export const tellsOn = (panelId: string): readonly TellView[] =>
  useWalkStore.getState().tells.filter(({ panels }) => panels.includes(panelId))

interface WalkKeysPlan {
  readonly record: RecordView | null
  readonly inHand: string | null
  readonly step: (step: 1 | -1) => void
  readonly goToNext: (place: number) => void
}

function panKeys(): KeyBinding[] {
  const moves = [
    ['ArrowLeft', -PAN_MM, 0],
    ['ArrowRight', PAN_MM, 0],
    ['ArrowUp', 0, -PAN_MM],
    ['ArrowDown', 0, PAN_MM],
  ] as const
  return moves.map(([key, x, y], index) => ({
    keys: `Shift+${key}`,
    does: 'move the plan, once it is larger than its room',
    run: () => panBy(x, y),
    unlisted: index > 0,
  }))
}

function amendLast({ record, inHand }: WalkKeysPlan): void {
  const findings = record?.findings.filter((finding) => finding.panelId === inHand) ?? []
  const { unfolded } = useWalkStore.getState()
  const open = findings.find((finding) => `F${finding.number}` === unfolded) ?? findings.at(-1)
  if (open !== undefined) enter({ kind: 'finding', amends: open.number })
}

/** Every key of the walk-round. */
export function walkKeys(plan: WalkKeysPlan): readonly KeyBinding[] {
  const { step, inHand } = plan
  const onPanel = (run: (panelId: string) => void) => () => {
    if (inHand !== null) run(inHand)
  }
  return [
    { keys: ']', does: 'next panel in walking order', run: () => step(1) },
    { keys: '[', does: 'panel before', run: () => step(-1) },
    { keys: 'ArrowDown', does: 'next panel', run: () => step(1), unlisted: true },
    { keys: 'ArrowUp', does: 'panel before', run: () => step(-1), unlisted: true },
    { keys: 'G', does: 'go to a panel by number or name', run: () => enter({ kind: 'go to' }) },
    { keys: 'M', does: 'state of the metal', run: onPanel(() => enter({ kind: 'metal' })) },
    { keys: 'P', does: 'state of the paint', run: onPanel(() => enter({ kind: 'paint' })) },
    {
      keys: 'N',
      does: 'inspected, and nothing found',
      run: onPanel((panelId) => act('panel.nothingFound', { panelId })),
    },
    { keys: 'X', does: 'not accessible, with the reason', run: onPanel(() => enter({ kind: 'not accessible' })) },
    {
      keys: 'Shift+X',
      does: 'not inspected after all',
      run: onPanel((panelId) => act('panel.notInspected', { panelId })),
    },
    { keys: 'F', does: 'add a finding', run: onPanel(() => enter({ kind: 'finding', amends: null })) },
    { keys: 'A', does: 'amend the finding that is unfolded', run: () => amendLast(plan) },
    { keys: 'E', does: 'add an exhibit', run: onPanel(() => enter({ kind: 'exhibit' })) },
    { keys: 'R', does: 'add coating readings', run: onPanel(() => enter({ kind: 'reading', amends: null })) },
    { keys: 'T', does: 'a note on the panel', run: onPanel(() => enter({ kind: 'note' })) },
    ...tellPlaces.map((place) => ({
      keys: `I ${place + 1}`,
      does: 'answer a tell of the sheet that is looked for on this panel',
      run: onPanel((panelId) => {
        const tell = tellsOn(panelId)[place]
        if (tell !== undefined) enter({ kind: 'tell', tell: tell.key })
      }),
      unlisted: place > 0,
    })),
    { keys: 'L 1', does: 'go to what would settle most', run: () => plan.goToNext(0) },
    { keys: 'L 2', does: 'to the second', run: () => plan.goToNext(1) },
    { keys: 'L 3', does: 'to the third', run: () => plan.goToNext(2) },
    ...sheetOrder.map((id, index) => ({
      keys: String(index + 1),
      does: `sheet of the plan: ${sheetWords[index]}`,
      run: () => turnTo(id),
    })),
    {
      keys: 'V',
      does: 'plan or table',
      run: turnTable,
    },
    { keys: '+', does: 'nearer', run: () => zoomBy(1.4) },
    { keys: '=', does: 'nearer', run: () => zoomBy(1.4), unlisted: true },
    { keys: '-', does: 'farther', run: () => zoomBy(1 / 1.4) },
    { keys: '0', does: 'whole sheet', run: () => useWalkStore.setState({ look: wholeSheet }) },
    ...panKeys(),
  ]
}
