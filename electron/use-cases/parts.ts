import { ProblemError } from '../../shared-types/problem-error.ts'
import { partDefinition, travelSetNames } from '../sheets/parts-list.ts'
import { requireCited } from './citations.ts'
import type { UseCases } from './program.ts'
import { rowChange, sendCommand } from './send-command.ts'

/** The parts register against the parts list. */
export const partUseCases: Pick<UseCases, 'part.set'> = {
  'part.set': (program, input) =>
    sendCommand(program, 'part.set', input, ({ now }) => {
      const { entry } = input
      const definition = partDefinition(entry.partId)
      if (definition === undefined) {
        const message = `The parts list holds no part "${entry.partId}". Choose one that is listed.`
        throw new ProblemError('not-found', message, { field: 'entry.partId' })
      }
      if (definition.bodies !== null && !definition.bodies.includes(now.particulars.body)) {
        const message = `A car of this body carries no ${definition[now.commission.names].toLowerCase()}. Correct the body under its particulars, or choose another part.`
        throw new ProblemError('not-found', message, { field: 'entry.partId' })
      }
      const set = entry.countsWith?.set ?? null
      if (set !== null && !travelSetNames().includes(set)) {
        const message = `The parts list knows no set “${set}” that travels together. Choose one that is listed, or none.`
        throw new ProblemError('not-found', message, { field: 'entry.countsWith' })
      }
      requireCited(now, 'exhibits', entry.exhibits, 'entry.exhibits')
      const which = entry.partId.slice(definition.id.length + 1)
      const name = definition[now.commission.names]
      return {
        changes: [rowChange('parts', entry.partId, entry)],
        label: `${name}${which === '' ? '' : ` ${which}`}: ${entry.state}`,
      }
    }),
}
