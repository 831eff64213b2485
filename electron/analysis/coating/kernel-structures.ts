import type { CovarianceStructure } from './covariance.ts'

/** Numbers of the models in `kernel/source/covariances.ts`; an error is never a covariance of the surface. */
const models = { error: 0, nugget: 1, spherical: 2, exponential: 3, 'matern 3/2': 4 } as const

/** Numbers that structures take in a kernel's memory. */
export const structureNumbers = (structures: readonly CovarianceStructure[]): number => 3 * structures.length

/** Writes structures the way the kernel reads them: model, sill and one by the range of each. */
export function writeStructures(numbers: Float64Array, structures: readonly CovarianceStructure[]): void {
  structures.forEach(({ model, sill, range }, at) => {
    const alone = model === 'nugget' || model === 'error'
    numbers.set([models[model], sill, alone ? 1 : 1 / range], 3 * at)
  })
}
