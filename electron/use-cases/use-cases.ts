import { claimUseCases } from './claims.ts'
import { coatingUseCases } from './coating.ts'
import { coatingCarUseCases } from './coating-car.ts'
import { coatingChangeUseCases } from './coating-change.ts'
import { coatingCutUseCases } from './coating-cut.ts'
import { coatingGridUseCases } from './coating-grid.ts'
import { coatingImportUseCases } from './coating-import.ts'
import { coatingMapUseCases } from './coating-map.ts'
import { coatingPlaceUseCases } from './coating-place.ts'
import { correctionUseCases } from './corrections.ts'
import { demonstrationUseCases } from './demonstration.ts'
import { exhibitUseCases } from './exhibits.ts'
import { fasteningUseCases } from './fastening-sample.ts'
import { figureUseCases } from './figures.ts'
import { findingUseCases } from './findings.ts'
import { identityUseCases } from './identity.ts'
import { identityViewUseCases } from './identity-view.ts'
import { identityWeightsUseCases } from './identity-weights.ts'
import { judgementUseCases } from './judgement.ts'
import { listUseCases } from './lists.ts'
import { measuredTellUseCases } from './measured-tells.ts'
import { numberFormatUseCases } from './number-format.ts'
import { observationUseCases } from './observations.ts'
import { ownSheetUseCases } from './own-sheets/own-sheets.ts'
import { partExpectationUseCases } from './part-expectation.ts'
import { partUseCases } from './parts.ts'
import { photographUseCases } from './photographs.ts'
import { pictureMeasureUseCases } from './picture-measures.ts'
import type { UseCases } from './program.ts'
import { recordUseCases } from './records.ts'
import { referenceSheetUseCases } from './reference-sheets.ts'
import { tableUseCases } from './register-table.ts'
import { remeasureUseCases } from './remeasuring.ts'
import { reportUseCases } from './report.ts'
import { sheetTermUseCases } from './sheet-terms.ts'
import { measuringUseCases } from './tape/measuring.ts'
import { timeLineUseCases } from './time-line.ts'
import { walkRoundUseCases } from './walk-round.ts'
import { weightUseCases } from './weights.ts'

/** Every request of the contract, done. Window, page and command line serve this one table. */
export const useCases: UseCases = {
  ...recordUseCases,
  ...demonstrationUseCases,
  ...listUseCases,
  ...figureUseCases,
  ...judgementUseCases,
  ...weightUseCases,
  ...timeLineUseCases,
  ...tableUseCases,
  ...reportUseCases,
  ...identityUseCases,
  ...numberFormatUseCases,
  ...referenceSheetUseCases,
  ...ownSheetUseCases,
  ...sheetTermUseCases,
  ...observationUseCases,
  ...identityViewUseCases,
  ...identityWeightsUseCases,
  ...walkRoundUseCases,
  ...findingUseCases,
  ...coatingUseCases,
  ...coatingMapUseCases,
  ...coatingPlaceUseCases,
  ...coatingCarUseCases,
  ...coatingChangeUseCases,
  ...coatingCutUseCases,
  ...coatingGridUseCases,
  ...coatingImportUseCases,
  ...partUseCases,
  ...partExpectationUseCases,
  ...fasteningUseCases,
  ...claimUseCases,
  ...correctionUseCases,
  ...exhibitUseCases,
  ...remeasureUseCases,
  ...photographUseCases,
  ...measuringUseCases,
  ...pictureMeasureUseCases,
  ...measuredTellUseCases,
}
