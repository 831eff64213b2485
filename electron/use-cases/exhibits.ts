import type { Exhibit, ExhibitWords } from '../../shared-types/exhibit.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { Draft } from '../record/car-record.ts'
import { numberedRow, numberedRows } from './numbered-rows.ts'
import { panelNameIn, requirePanel } from './panels-of-record.ts'
import type { UseCases } from './program.ts'
import { rowMark, shortened } from './row-marks.ts'
import { checkSample } from './sample-taken.ts'
import { type Decision, rowChange, sendCommand } from './send-command.ts'
import { checkTaken } from './tape/measuring.ts'

/** Says what an exhibit is, for a label: "photograph, Left front wing". */
export function exhibitInWords(exhibit: Omit<Exhibit, 'number'>, now: RecordView): string {
  const about = exhibit.panelId === null ? exhibit.caption : panelNameIn(now, exhibit.panelId)
  return about === '' ? exhibit.kind : `${exhibit.kind}, ${shortened(about)}`
}

/** Throws when the exhibit is placed on a panel the car does not have. */
export function checkExhibitPlace(words: Pick<ExhibitWords, 'panelId'>, now: RecordView, field: string): void {
  if (words.panelId !== null) requirePanel(now, words.panelId, field)
}

const exhibits = numberedRows({
  register: 'exhibits',
  command: 'exhibit',
  noun: 'Exhibit',
  describe: exhibitInWords,
  check: (row, now) => {
    checkExhibitPlace(row, now, 'draft.panelId')
    if ((row.kind === 'measurement') !== (row.measurement !== null)) {
      const message =
        row.measurement === null
          ? 'Give the measured value, or choose another kind of exhibit.'
          : 'Only an exhibit of the kind "measurement" carries a measured value. Choose that kind, or leave the value out.'
      throw new ProblemError('input-refused', message, { field: 'draft.measurement' })
    }
    if (row.measurement !== null) {
      checkTaken(row.measurement)
      checkSample(row.measurement)
    }
  },
})

/** What taking a photograph in decides; see `photographs.ts`. */
export function photographTaken(
  told: Pick<Exhibit, 'photograph' | 'panelId' | 'view' | 'madeBy'>,
  draft: Draft,
  at: string,
): Decision {
  const plain = {
    kind: 'photograph',
    caption: '',
    place: '',
    at: null,
    inReport: true,
    measurement: null,
    picked: null,
  } as const
  return exhibits.adding({ ...plain, ...told, addedAt: at }, draft, at)
}

/** What keeping a measurement read off a photograph decides; see `picture-measures.ts`. */
export function addingPicked(
  { words, ...told }: { readonly words: ExhibitWords } & Pick<Exhibit, 'measurement' | 'picked'>,
  draft: Draft,
  at: string,
): Decision {
  return exhibits.adding({ ...words, ...told, kind: 'measurement', photograph: null, addedAt: at }, draft, at)
}

/** Evidence that findings and verdicts cite, photographs apart: those come in by `exhibits.import`. */
export const exhibitUseCases: Pick<UseCases, 'exhibit.add' | 'exhibit.describe' | 'exhibit.withdraw'> = {
  'exhibit.add': (program, input) =>
    sendCommand(program, 'exhibit.add', input, (draft, at) =>
      exhibits.adding({ ...input.draft, photograph: null, picked: null, addedAt: at }, draft, at),
    ),
  'exhibit.describe': (program, input) =>
    sendCommand(program, 'exhibit.describe', input, ({ now }) => {
      checkExhibitPlace(input.words, now, 'words.panelId')
      const row = { ...numberedRow(now, 'exhibits', input.number), ...input.words }
      return {
        changes: [rowChange('exhibits', String(input.number), row)],
        label: `Exhibit ${rowMark('exhibits', input.number)} described: ${exhibitInWords(row, now)}`,
        number: input.number,
      }
    }),
  'exhibit.withdraw': exhibits.withdraw,
}
