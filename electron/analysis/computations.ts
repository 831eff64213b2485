import type { ComputationInput, ComputationName, ComputationOutput } from '../../shared-types/computations.ts'
import { coatingField } from './coating/coating-field.ts'
import { coatingChange } from './coating/extent-change.ts'
import { sectionAlongLine } from './coating/section-along-line.ts'
import { readDateCode } from './dating/date-code.ts'
import { checkIdentificationNumber } from './dating/identification-number.ts'
import { odometerOrder } from './dating/odometer.ts'
import { timeLine } from './dating/time-line.ts'
import { readTyreCode } from './dating/tyre-code.ts'
import { leanFromDiagonals } from './geometry/diagonals.ts'
import { wearOf } from './geometry/drum-wear.ts'
import { gapsOf } from './geometry/gaps.ts'
import { measureInPicture } from './geometry/picture-measure.ts'
import { sheetFromTime } from './geometry/sheet-thickness.ts'
import { studCircleFrom } from './geometry/stud-circle.ts'
import { trilaterate } from './geometry/trilateration.ts'
import { pitchOfWelds } from './geometry/weld-pitch.ts'
import { rustGrade } from './grades/rust-grade.ts'
import { answerIdentity } from './identity/answer-identity.ts'
import { tellExactnessOf } from './identity/tell-exactness.ts'
import { sharesAsked } from './identity/tell-shares.ts'
import { originality } from './originality/originality.ts'
import { compareFastening } from './sampling/compare-fastening.ts'
import { boundJointOptions } from './sampling/joint-options.ts'
import { supportOfParts } from './sampling/part-support.ts'
import { seededSample } from './sampling/random-sample.ts'
import { boundFromSample, sizeOfSample } from './sampling/sample-bound.ts'
import { combineUncertainty } from './statistics/combined-uncertainty.ts'
import { drawUncertainty } from './statistics/drawn-distribution.ts'
import { grubbsTest } from './statistics/grubbs.ts'
import { decideAgainstLimits } from './statistics/limit-decision.ts'
import { spotSummary } from './statistics/spot-summary.ts'
import { univariate } from './statistics/univariate.ts'
import { convertCoating, convertLength } from './units/conversion.ts'

/** The function behind each computation of `shared-types/computations.ts`. */
export const compute: { readonly [N in ComputationName]: (input: ComputationInput<N>) => ComputationOutput<N> } = {
  originality,
  'spot-summary': spotSummary,
  univariate: ({ values }) => univariate(values),
  'rust-grade': rustGrade,
  'convert-length': convertLength,
  'convert-coating': convertCoating,
  identity: answerIdentity,
  'tell-shares': sharesAsked,
  coating: (input) => coatingField(input),
  'coating-change': coatingChange,
  'coating-section': sectionAlongLine,
  'identification-number': checkIdentificationNumber,
  'tyre-code': readTyreCode,
  'date-code': readDateCode,
  'time-line': timeLine,
  odometer: odometerOrder,
  fastening: compareFastening,
  'sample-bound': boundFromSample,
  'sample-size': sizeOfSample,
  'random-sample': seededSample,
  'part-support': supportOfParts,
  'joint-options': boundJointOptions,
  'combined-uncertainty': combineUncertainty,
  'drawn-uncertainty': drawUncertainty,
  'limit-decision': decideAgainstLimits,
  grubbs: grubbsTest,
  'picture-measure': measureInPicture,
  'tell-exactness': tellExactnessOf,
  'stud-circle': studCircleFrom,
  'drum-wear': wearOf,
  'gap-series': gapsOf,
  diagonals: leanFromDiagonals,
  trilateration: trilaterate,
  'sheet-thickness': sheetFromTime,
  'weld-pitch': pitchOfWelds,
}
