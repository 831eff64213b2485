import type { Measurement } from '../../shared-types/exhibit.ts'
import type { TellMeasured } from '../../shared-types/measuring-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import { tellExactnessOf } from '../analysis/identity/tell-exactness.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
import type { UseCases } from './program.ts'
import { sheetsOfRecord } from './sheets-of-record.ts'

/** Units of measurements in the words of reference sheets; those left out are in no sheet. */
export const unitOfTells: { readonly [U in Measurement['unit']]?: CompiledTell['tell']['unit'] } = {
  mm: 'mm',
  '°': 'degrees',
  kg: 'kg',
  count: 'count',
}
/** When a measured tell counts as decided: from the likelihood ratio "moderately strong" of ENFSI 2015 on. */
export const decidingTell = { enough: 100, fitsWithin: 3 }

function expectedOf({ tell }: CompiledTell): TellMeasured['values'] {
  if (tell.follows.kind !== 'by cases') return []
  return tell.follows.values.flatMap(({ id, name, measure }) => (measure === null ? [] : [{ id, name, ...measure }]))
}

/** A measured value with its unit, as a tell can be compared with. */
interface Value {
  readonly value: number
  readonly standardUncertainty: number
  readonly unit: Measurement['unit']
}

/** Tells of the sheets that are measured in that unit, with what this value says of each; the nearest first. */
export function tellsMeasured(
  compiled: CompiledSheets | null,
  observations: readonly Observation[],
  { value, standardUncertainty, unit }: Value,
): readonly TellMeasured[] {
  const wanted = unitOfTells[unit]
  const fitting = (compiled?.tells ?? []).filter(({ tell }) => tell.unit !== null && tell.unit === wanted)
  const nearest = (values: TellMeasured['values']) => Math.min(...values.map(({ mean }) => Math.abs(value - mean)))
  return fitting
    .flatMap((compiledTell): TellMeasured[] => {
      const values = expectedOf(compiledTell)
      if (values.length < 2) return []
      const { key, tell } = compiledTell
      const expected = values.map(({ id, mean, standardDeviation }) => ({ id, mean, standardDeviation }))
      const question = { value, standardUncertainty, expected, ...decidingTell }
      return [
        {
          key,
          name: tell.name,
          unit: tell.unit ?? '',
          values,
          exactness: tellExactnessOf(question),
          noted: observations.find((row) => row.tell === key)?.measured ?? null,
        },
      ]
    })
    .toSorted((a, b) => nearest(a.values) - nearest(b.values))
}

export const measuredTellUseCases: Pick<UseCases, 'measuring.tells'> = {
  'measuring.tells': async (program, asked) => {
    const record = program.record()
    const { compiled } = await sheetsOfRecord(record)
    return tellsMeasured(compiled, record.view().observations, asked)
  },
}
