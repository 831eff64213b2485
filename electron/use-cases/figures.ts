import { ProblemError } from '../../shared-types/problem-error.ts'
import { bodyPlan } from '../figures/body-plan.ts'
import { planMarks } from '../figures/plan-marks.ts'
import { requireDimensions } from '../sheets/dimension-check.ts'
import { panelList } from '../sheets/panel-list.ts'
import type { UseCases } from './program.ts'

/** The body plan, and what the record draws on it. */
export const figureUseCases: Pick<UseCases, 'figures.plan' | 'figures.marks'> = {
  'figures.plan': async (_program, { body, names, dimensions, conditions, lengthUnit }) => {
    requireDimensions(body, dimensions ?? {}, { field: 'dimensions', names, lengthUnit: lengthUnit ?? 'mm' })
    return bodyPlan(body, names, dimensions, conditions, lengthUnit)
  },

  'figures.marks': async (program, { sheet: sheetId, pixelsPerMm, inHand }) => {
    const record = program.record().view()
    const { particulars, commission } = record
    const { body, dimensions, conditions } = particulars
    const plan = bodyPlan(body, commission.names, dimensions, conditions)
    const sheet = plan.sheets.find(({ id }) => id === sheetId)
    if (sheet === undefined) {
      throw new ProblemError(
        'not-found',
        'The plan of this body has no such sheet. Choose another sheet of the plan.',
        {
          field: 'sheet',
        },
      )
    }
    const { panels } = panelList(body, commission.level, conditions)
    return planMarks({ sheet, record, definitions: panels, names: commission.names, pixelsPerMm, inHand })
  },
}
