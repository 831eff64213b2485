import type { ComputationOutput } from '../../../shared-types/computations.ts'

/** ISO 4628-3:2016, Table 1: rusted area of each degree Ri 0 to Ri 4, per cent; Ri 5 is 40 to 50 (recalled). */
const isoAreas = [0, 0.05, 0.5, 1, 8] as const

/** ASTM D610-08, Table 1: greatest rusted area of grades 10 down to 1, per cent; grade 0 is more than the last. */
const astmAreas = [0.01, 0.03, 0.1, 0.3, 1, 3, 10, 16, 33, 50] as const

const isoRule = 'A share between two degrees takes the upper one, so that rust is never understated.'
const astmRule = 'The grade whose range holds the share; upper limits belong to the range.'

/** Grades of rust by both standards from the affected share of the area looked at, per cent 0 to 100. */
export function rustGrade({ affectedPercent }: { readonly affectedPercent: number }): ComputationOutput<'rust-grade'> {
  const degree = isoAreas.findIndex((area) => affectedPercent <= area)
  const step = astmAreas.findIndex((area) => affectedPercent <= area)
  return {
    iso4628Part3: { grade: `Ri ${degree === -1 ? isoAreas.length : degree}`, rule: isoRule },
    astmD610: { grade: step === -1 ? 0 : astmAreas.length - step, rule: astmRule },
  }
}
