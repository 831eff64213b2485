import { ProblemError } from '../../shared-types/problem-error.ts'
import { checkExhibitPlace, exhibitInWords } from './exhibits.ts'
import { following, withFollowers } from './measured-followers.ts'
import { numberedRow } from './numbered-rows.ts'
import type { UseCases } from './program.ts'
import { rowMark } from './row-marks.ts'
import { checkSample } from './sample-taken.ts'
import { rowChange, sendCommand } from './send-command.ts'
import { checkTaken } from './tape/measuring.ts'

/** A measurement by hand, tape, calliper or probe, opened again and corrected; its number stays. */
export const remeasureUseCases: Pick<UseCases, 'exhibit.remeasure'> = {
  'exhibit.remeasure': (program, input) =>
    sendCommand(program, 'exhibit.remeasure', input, ({ now }) => {
      const { number, words, measurement } = input
      checkExhibitPlace(words, now, 'words.panelId')
      checkTaken(measurement)
      checkSample(measurement)
      const before = numberedRow(now, 'exhibits', number)
      const mark = rowMark('exhibits', number)
      if (before.measurement === null || before.picked !== null) {
        const message =
          before.picked === null
            ? `${mark} holds no measurement. Choose one that does.`
            : `${mark} was read off a photograph: open it there and pick again.`
        throw new ProblemError('rule-of-the-trade', message, { field: 'number' })
      }
      const row = { ...before, ...words, measurement }
      const followers = following(now, number, measurement)
      return {
        changes: [rowChange('exhibits', String(number), row), ...followers],
        label: withFollowers(`Exhibit ${mark} measured again: ${exhibitInWords(row, now)}`, followers),
        number,
      }
    }),
}
