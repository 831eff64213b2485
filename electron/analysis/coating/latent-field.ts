import { type Draw, seededDraw } from '../sampling/seeded-draws.ts'
import { QuickNormals } from '../statistics/quick-normals.ts'
import type { Places } from './covariance.ts'
import { type FillerDraws, fillerDraws, type ShapedDraw } from './field-draws.ts'
import type { FieldPrior } from './field-prior.ts'
import { latentGrid } from './latent-grid.ts'
import { LatentSampler } from './latent-sampler.ts'
import { type FieldReading, latentSites, type PaintFilm } from './latent-sites.ts'
import { nodeNeighbours } from './node-neighbours.ts'

/** Earlier places each node is simulated from. */
const NEIGHBOURS = 12

/**
 * Filler at the nodes, drawn from its posterior given the readings: paint film plus a latent Gaussian field censored at
 * nought. Every shape of the prior gets the same share of the draws. The same seed draws the same again.
 */
export function drawFiller(
  readings: readonly FieldReading[],
  nodes: Places,
  film: PaintFilm,
  prior: FieldPrior,
  { draws, seed, keepOn }: { draws: number; seed: string; keepOn: () => void },
): FillerDraws {
  const draw: Draw = seededDraw(seed)
  const normals = new QuickNormals(draw)
  const places = {
    x: Float64Array.from(readings, ({ xMm }) => xMm),
    y: Float64Array.from(readings, ({ yMm }) => yMm),
  }
  const grid = latentGrid(places, prior)
  const siteDraws = prior.shapes.flatMap((shape, at): ShapedDraw[] => {
    const share = Math.floor(((at + 1) * draws) / prior.shapes.length) - Math.floor((at * draws) / prior.shapes.length)
    const sampler = new LatentSampler(grid, latentSites(readings, film, shape, prior), prior, draw, normals.one)
    return sampler.take(share, keepOn).map((taken) => ({ ...taken, shape }))
  })
  return fillerDraws(places, nodes, nodeNeighbours(places, nodes, NEIGHBOURS), siteDraws, prior, normals, keepOn)
}
