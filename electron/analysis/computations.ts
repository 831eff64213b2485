import type { ComputationInput, ComputationName, ComputationOutput } from '../../shared-types/computations.ts'
import { rustGrade } from './grades/rust-grade.ts'
import { originality } from './originality/originality.ts'
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
}
