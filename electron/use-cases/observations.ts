import type { Observation } from '../../shared-types/observation.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
import { requireCited } from './citations.ts'
import { checkTakenFrom } from './measured-followers.ts'
import type { Program, UseCases } from './program.ts'
import { rowChange, sendCommand } from './send-command.ts'
import { sheetsOfRecord } from './sheets-of-record.ts'

async function tellOf(program: Program, key: string): Promise<CompiledTell> {
  const { compiled, problem } = await sheetsOfRecord(program.record())
  const found = compiled?.tells.find((tell) => tell.key === key)
  if (found !== undefined) return found
  const message = problem ?? `No reference sheet of this record has a tell “${key}”. Take the sheet in first.`
  throw new ProblemError('not-found', message, { field: 'observation.tell' })
}

const refuse = (message: string, field: string): never => {
  throw new ProblemError('rule-of-the-trade', message, { field: `observation.${field}` })
}

/** Throws when what was seen does not fit together: a value the tell does not have, a measure without a unit. */
export function checkObservation({ state, value, surePercent, measured }: Observation, tell: CompiledTell): void {
  const known = value === null || tell.values.some(({ id }) => id === value)
  if (!known) refuse(`“${tell.tell.name}” has no value “${value}”. Choose one of those listed.`, 'value')
  if ((state === 'seen' || state === 'believed') && value === null)
    refuse('Say which of its values was seen, or that it cannot be seen.', 'value')
  if (state === 'believed' && surePercent === null) refuse('Say how sure you are, 1 to 99 of a hundred.', 'surePercent')
  if (state === 'measured' && measured === null) refuse('Enter what was measured and its uncertainty.', 'measured')
  if (state === 'measured' && tell.tell.unit === null)
    refuse('This tell is seen, not measured: choose one of its values.', 'state')
}

/** What was seen of the tells of the record's sheets. */
export const observationUseCases: Pick<UseCases, 'observation.set' | 'observation.withdraw'> = {
  'observation.set': async (program, input) => {
    const { observation } = input
    const tell = await tellOf(program, observation.tell)
    checkObservation(observation, tell)
    const named = tell.values.find(({ id }) => id === observation.value)?.name
    return sendCommand(program, 'observation.set', input, ({ now }) => {
      requireCited(now, 'exhibits', observation.exhibits, 'observation.exhibits')
      checkTakenFrom(observation, tell, now)
      return {
        changes: [rowChange('observations', observation.tell, observation)],
        label: `${tell.tell.name}: ${named ?? observation.state}`,
      }
    })
  },

  'observation.withdraw': (program, input) =>
    sendCommand(program, 'observation.withdraw', input, ({ now }) => {
      if (!now.observations.some(({ tell }) => tell === input.tell)) {
        throw new ProblemError('not-found', 'Nothing was noted of this tell.', { field: 'tell' })
      }
      return { changes: [rowChange('observations', input.tell, null)], label: `Observation withdrawn: ${input.tell}` }
    }),
}
