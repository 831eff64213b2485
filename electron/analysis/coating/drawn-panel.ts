import type { CoatingFieldAnswer, CoatingFieldInput } from '../../../shared-types/coating.ts'
import type { FillerDraws } from './field-draws.ts'
import { fieldPrior } from './field-prior.ts'
import { type ExtentDraws, extentDraws } from './field-summary.ts'
import { filmOfPanel, filmWithoutReference } from './film-reference.ts'
import { drawFiller } from './latent-field.ts'
import type { FieldReading, PaintFilm } from './latent-sites.ts'
import { usableReadings } from './usable-readings.ts'

/** The drawn field of one panel, from which map, extents, next readings and differences are taken. */
export interface CoatingField {
  readonly film: PaintFilm
  readonly readings: readonly FieldReading[]
  readonly leftOut: CoatingFieldAnswer['leftOut']
  /** Numbers of the readable nodes in the input; the rows of `drawn` follow them. */
  readonly readable: Int32Array
  readonly weights: Float64Array
  readonly drawn: FillerDraws
  readonly extents: ExtentDraws
}

/**
 * Draws the field. Nodes that cannot be read are left out and never filled in. `keepOn` is asked now and then and throws to
 * cancel or when time is up.
 * @throws ProblemError when there is nothing to draw from.
 */
export function drawCoatingField(input: CoatingFieldInput, keepOn: () => void): CoatingField {
  const { readings, leftOut } = usableReadings(input)
  const readable = Int32Array.from(input.nodes.flatMap(({ readable: can }, at) => (can ? [at] : [])))
  const places = {
    x: Float64Array.from(readable, (at) => input.nodes[at]?.xMm ?? 0),
    y: Float64Array.from(readable, (at) => input.nodes[at]?.yMm ?? 0),
  }
  const weights = Float64Array.from(readable, (at) => input.nodes[at]?.areaMm2 ?? 0)
  const film = filmOfPanel(readings, input.reference ?? filmWithoutReference(readings))
  const drawn = drawFiller(readings, places, film, fieldPrior, { draws: input.draws, seed: input.seed, keepOn })
  return {
    film,
    readings,
    leftOut,
    readable,
    weights,
    drawn,
    extents: extentDraws(drawn, weights, input.thresholdUm - film.medianUm),
  }
}
