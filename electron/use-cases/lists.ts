import { carFeatures } from '../sheets/car-features.ts'
import { cautions } from '../sheets/cautions.ts'
import { dimensionList } from '../sheets/dimension-list.ts'
import { gapJoints } from '../sheets/joint-list.ts'
import { panelList } from '../sheets/panel-list.ts'
import { partsList } from '../sheets/parts-list.ts'
import type { UseCases } from './program.ts'

/** Reference lists shipped with the program. */
export const listUseCases: Pick<
  UseCases,
  'lists.panels' | 'lists.dimensions' | 'lists.features' | 'lists.cautions' | 'lists.parts' | 'lists.joints'
> = {
  'lists.panels': async (_, { body, level, conditions }) => panelList(body, level, conditions),
  'lists.dimensions': async (_, { body }) => dimensionList(body),
  'lists.features': async (_, { body }) => carFeatures(body),
  'lists.cautions': async () => cautions(),
  'lists.parts': async () => partsList(),
  'lists.joints': async (_, { body, names }) => gapJoints(body, names),
}
