import { weighedThing } from '../../shared-types/own-weight.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { weighableOf } from './judgement.ts'
import type { UseCases } from './program.ts'
import { rowChange, sendCommand } from './send-command.ts'

/** What a weight is set for, by its name; undefined where this car has no such thing. */
const weighedName = (weighs: string, now: RecordView): string | undefined =>
  weighableOf(now).find((each) => each.weighs === weighs)?.label

/** Weights the user sets for the shares of originality: kept with who set them and when. */
export const weightUseCases: Pick<UseCases, 'weight.set' | 'weight.withdraw'> = {
  'weight.set': (program, input) =>
    sendCommand(program, 'weight.set', input, ({ now }, at) => {
      const { draft } = input
      const name = weighedName(draft.weighs, now)
      if (name === undefined) {
        const message = `This car has no “${weighedThing(draft.weighs).id}” to weigh. Choose one that is listed.`
        throw new ProblemError('not-found', message, { field: 'draft.weighs' })
      }
      return {
        changes: [rowChange('weights', draft.weighs, { ...draft, setBy: now.commission.examiner, setAt: at })],
        label: `Weight of ${name}: ${draft.factor}`,
      }
    }),

  'weight.withdraw': (program, input) =>
    sendCommand(program, 'weight.withdraw', input, ({ now }) => {
      if (!now.weights.some(({ weighs }) => weighs === input.weighs)) {
        throw new ProblemError('not-found', 'No weight of your own is set for this.', { field: 'weighs' })
      }
      return {
        changes: [rowChange('weights', input.weighs, null)],
        label: `Weight of ${weighedName(input.weighs, now) ?? weighedThing(input.weighs).id} withdrawn`,
      }
    }),
}
