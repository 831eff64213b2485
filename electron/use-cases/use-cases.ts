import { claimUseCases } from './claims.ts'
import { coatingUseCases } from './coating.ts'
import { coatingMapUseCases } from './coating-map.ts'
import { correctionUseCases } from './corrections.ts'
import { demonstrationUseCases } from './demonstration.ts'
import { exhibitUseCases } from './exhibits.ts'
import { figureUseCases } from './figures.ts'
import { findingUseCases } from './findings.ts'
import { identityUseCases } from './identity.ts'
import { identityViewUseCases } from './identity-view.ts'
import { judgementUseCases } from './judgement.ts'
import { listUseCases } from './lists.ts'
import { observationUseCases } from './observations.ts'
import { partUseCases } from './parts.ts'
import { photographUseCases } from './photographs.ts'
import type { UseCases } from './program.ts'
import { recordUseCases } from './records.ts'
import { referenceSheetUseCases } from './reference-sheets.ts'
import { tableUseCases } from './register-table.ts'
import { reportUseCases } from './report.ts'
import { walkRoundUseCases } from './walk-round.ts'

/** Every request of the contract, done. Window, page and command line serve this one table. */
export const useCases: UseCases = {
  ...recordUseCases,
  ...demonstrationUseCases,
  ...listUseCases,
  ...figureUseCases,
  ...judgementUseCases,
  ...tableUseCases,
  ...reportUseCases,
  ...identityUseCases,
  ...referenceSheetUseCases,
  ...observationUseCases,
  ...identityViewUseCases,
  ...walkRoundUseCases,
  ...findingUseCases,
  ...coatingUseCases,
  ...coatingMapUseCases,
  ...partUseCases,
  ...claimUseCases,
  ...correctionUseCases,
  ...exhibitUseCases,
  ...photographUseCases,
}
