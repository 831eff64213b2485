import type { ComputationOutput } from './computations.ts'
import type { Measurement } from './exhibit.ts'
import type { PictureMeasured } from './measuring.ts'
import type { Observation } from './observation.ts'

/** A measure on a photograph: as computed, and rounded and worded as it would be kept. */
export interface PictureAnswer {
  readonly measured: PictureMeasured
  readonly kept: Omit<Measurement, 'what'>
}

/** A tell measured in the unit of a measurement, and what that measurement says of it. */
export interface TellMeasured {
  readonly key: string
  readonly name: string
  readonly unit: string
  readonly values: readonly {
    readonly id: string
    readonly name: string
    readonly mean: number
    readonly standardDeviation: number
  }[]
  readonly exactness: ComputationOutput<'tell-exactness'>
  /** What is noted of it as measured; null when nothing is. */
  readonly noted: Observation['measured']
}

/** A measure on a photograph the record keeps, measured again from its picks. */
export interface KeptPicture {
  readonly exhibit: number
  readonly photograph: number
  readonly what: string
  readonly answer: PictureAnswer
  /** Tells that take their value from it, with what it decides. */
  readonly tells: readonly TellMeasured[]
}
