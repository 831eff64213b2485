import type { PanelState } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { Acknowledgement, RecordView } from '../../shared-types/record.ts'
import { lookedAt, panelNameIn, panelStateOf, requirePanel, untouchedPanel } from './panels-of-record.ts'
import type { Program, UseCases } from './program.ts'
import { listOfMarks, rowMark } from './row-marks.ts'
import { rowChange, sendCommand } from './send-command.ts'

type PanelCommand = 'setMetal' | 'setPaint' | 'nothingFound' | 'notAccessible' | 'notInspected' | 'howSeen' | 'note'

function change(
  program: Program,
  act: PanelCommand,
  input: { readonly commandId: string; readonly panelId: string } & Readonly<Record<string, unknown>>,
  inWords: string,
  decide: (state: PanelState, now: RecordView) => PanelState,
): Promise<Acknowledgement> {
  return sendCommand(program, `panel.${act}`, input, ({ now }, at) => {
    requirePanel(now, input.panelId)
    const after = { ...decide(panelStateOf(now, input.panelId), now), changedAt: at }
    return {
      changes: [rowChange('panels', input.panelId, after)],
      label: `${panelNameIn(now, input.panelId)}: ${inWords}`,
    }
  })
}

/** Refuses an act that would deny the findings of a panel, and names them. */
function requireNoFindings(now: RecordView, panelId: string, act: string): void {
  const there = now.findings.filter((finding) => finding.panelId === panelId)
  if (there.length === 0) return
  const marks = listOfMarks(there.map((finding) => rowMark('findings', finding.number)))
  const message = `${panelNameIn(now, panelId)} cannot be ${act} while it carries ${marks}. Withdraw or move what does not belong there first.`
  throw new ProblemError('rule-of-the-trade', message, { field: 'panelId' })
}

/** Filler in place of metal is not to be told from the front (common practice, no source). */
function requireBack(state: PanelState, message: string): void {
  if (state.metal !== 'filler in place of metal' || state.backSeen || state.magnetVoid) return
  throw new ProblemError('rule-of-the-trade', message, {
    field: 'metal',
    instead: ['filler over metal', 'not determined'],
  })
}

const fromTheFront =
  'Filler in place of metal cannot be told from the front: note that the back of the panel was seen, or that a magnet in cloth found no pull there. Until then write "filler over metal" or "not determined".'
const stillInPlace =
  'This panel is noted as filler in place of metal, which rests on the back seen or the magnet. Set the metal to "filler over metal" or "not determined" first.'

const reset = (state: PanelState): PanelState => ({ ...untouchedPanel(state.panelId), note: state.note })

/** What a surveyor notes of a panel on the walk. */
export const walkRoundUseCases: Pick<UseCases, `panel.${PanelCommand}`> = {
  'panel.setMetal': (program, input) =>
    change(program, 'setMetal', input, input.metal, (state, now) => {
      if (input.metal === 'not inspected') {
        requireNoFindings(now, input.panelId, 'set back to not inspected')
        return reset(state)
      }
      const after = { ...lookedAt(state), metal: input.metal }
      requireBack(after, fromTheFront)
      return after
    }),
  'panel.setPaint': (program, input) =>
    change(program, 'setPaint', input, `paint ${input.paint}`, (state) =>
      input.paint === 'not inspected' ? { ...state, paint: input.paint } : { ...lookedAt(state), paint: input.paint },
    ),
  'panel.nothingFound': (program, input) =>
    change(program, 'nothingFound', input, 'inspected and nothing found', (state, now) => {
      requireNoFindings(now, input.panelId, 'noted as inspected and nothing found')
      return { ...lookedAt(state), nothingFound: true }
    }),
  'panel.notAccessible': (program, input) =>
    change(program, 'notAccessible', input, `not accessible, ${input.reason}`, (state, now) => {
      requireNoFindings(now, input.panelId, 'noted as not accessible')
      return { ...reset(state), inspection: 'not accessible', reason: input.reason }
    }),
  'panel.notInspected': (program, input) =>
    change(program, 'notInspected', input, 'not inspected', (state, now) => {
      requireNoFindings(now, input.panelId, 'set back to not inspected')
      return reset(state)
    }),
  'panel.howSeen': (program, input) =>
    change(program, 'howSeen', input, howSeenInWords(input), (state) => {
      const seen = input.backSeen || input.magnetVoid ? lookedAt(state) : state
      const after = { ...seen, backSeen: input.backSeen, magnetVoid: input.magnetVoid }
      requireBack(after, stillInPlace)
      return after
    }),
  'panel.note': (program, input) => change(program, 'note', input, 'note', (state) => ({ ...state, note: input.note })),
}

function howSeenInWords({
  backSeen,
  magnetVoid,
}: {
  readonly backSeen: boolean
  readonly magnetVoid: boolean
}): string {
  return `${backSeen ? 'back seen' : 'back not seen'}, ${magnetVoid ? 'magnet found no pull' : 'no magnet void noted'}`
}
