import { spawnSync } from 'node:child_process'
import { fieldPrior } from '../../../electron/analysis/coating/field-prior.ts'
import { exceedingChance, extentDraws } from '../../../electron/analysis/coating/field-summary.ts'
import { drawFiller } from '../../../electron/analysis/coating/latent-field.ts'
import { krigeNearest } from '../../../electron/analysis/coating/nearest-kriging.ts'
import { worthwhileSpots } from '../../../electron/analysis/coating/next-reading.ts'
import { krige, krigingSystem } from '../../../electron/analysis/coating/ordinary-kriging.ts'
import { seededDraw } from '../../../electron/analysis/sampling/seeded-draws.ts'
import { ruleAgainstRandom } from '../../analysis/coating/reading-control.ts'
import { panelKinds } from '../../analysis/coating/simulated-filler.ts'
import { gridNodes } from '../../analysis/coating/simulated-nodes.ts'
import { simulatedPanel } from '../../analysis/coating/simulated-panels.ts'

/** Processor time of the best of some rounds, milliseconds, after one to warm up. */
function processorMs(rounds: number, act: () => void): number {
  act()
  const times = Array.from({ length: rounds }, () => {
    const before = process.cpuUsage()
    act()
    const { user, system } = process.cpuUsage(before)
    return (user + system) / 1000
  })
  return Math.min(...times)
}

/** The field of one panel of 100 readings: draws, extents and chances, and the next reading from them. */
export function latentField() {
  const panel = simulatedPanel('patches', 100, 'benchmark')
  const film = { medianUm: panel.trueFilmUm, logDeviation: 0.1 }
  const field = (count: number, draws: number) => {
    const nodes = gridNodes(panel.widthMm, panel.heightMm, count)
    const drawn = drawFiller(panel.readings, nodes, film, fieldPrior, {
      draws,
      seed: 'benchmark',
      keepOn: () => undefined,
    })
    const { volumeMm3 } = extentDraws(drawn, nodes.areaMm2, 300 - film.medianUm)
    exceedingChance(drawn, 300 - film.medianUm)
    return { drawn, volumeMm3 }
  }
  const { drawn, volumeMm3 } = field(2500, 400)
  const terms = { saturationUm: 1900, paintUm: 40, readingDeviationUm: (um: number) => 12 + 0.015 * um }
  const everywhere = new Uint8Array(drawn.nodes).fill(1)
  const row = (what: string, ms: number, aim: string) => ({
    what,
    ours: `${ms.toFixed(1)} ms`,
    reference: null,
    ratio: null,
    aim,
  })
  return [
    row(
      'latent field, 100 readings, 2,500 nodes, 400 draws, processor time',
      processorMs(12, () => field(2500, 400)),
      'under 150 ms',
    ),
    row(
      'the same as a first picture, 625 nodes, 90 draws',
      processorMs(12, () => field(625, 90)),
      'under 50 ms',
    ),
    row(
      'next reading of 2,500 nodes, 400 draws',
      processorMs(20, () => worthwhileSpots(drawn, volumeMm3, everywhere, terms, 1)),
      'under 15 ms',
    ),
    row(
      'three next readings',
      processorMs(20, () => worthwhileSpots(drawn, volumeMm3, everywhere, terms, 3)),
      '-',
    ),
  ]
}

/** Random places read 15 more times against the rule's, by the width of the interval of volume as shown: the ratio is rule to random. */
export function nextReadingAgainstRandom() {
  return panelKinds.map((kind) => {
    const outcomes = Array.from({ length: 9 }, (_, at) => ruleAgainstRandom(kind, `control ${kind} ${at}`, 15))
    const median = (values: number[]): number => values.sort((one, other) => one - other)[4] as number
    return {
      what: `width of volume after 15 more readings, rule against random places, ${kind}, median of 9 panels`,
      ours: `${median(outcomes.map(({ ruleWidth }) => ruleWidth / 1000)).toFixed(0)} cm³`,
      reference: `${median(outcomes.map(({ randomWidth }) => randomWidth / 1000)).toFixed(0)} cm³`,
      ratio: median(outcomes.map(({ ruleWidth, randomWidth }) => ruleWidth / randomWidth)),
      aim: 'at most 0.5',
    }
  })
}

function randomPlaces(count: number, seed: string) {
  const draw = seededDraw(seed)
  return {
    x: Float64Array.from({ length: count }, () => 1000 * draw()),
    y: Float64Array.from({ length: count }, () => 1000 * draw()),
  }
}

const model = [
  { model: 'nugget', sill: 0.05, range: 0 },
  { model: 'exponential', sill: 0.6, range: 150 },
] as const

/** Ordinary kriging with variance, side by side with gstat of R where both are installed. */
export function ordinaryKriging() {
  const gstat = gstatInstalled()
  if (!gstat) process.stderr.write('  gstat of R is not installed: no side-by-side reference\n')
  return [
    [400, 40_000, null, 'at most 0.1'],
    [2000, 10_000, null, 'at most 0.1'],
    [400, 10_000, 24, 'at most 0.33'],
  ].map((line) => {
    const [count, targets, near, aim] = line as [number, number, number | null, string]
    const places = randomPlaces(count, 'kriging readings')
    const draw = seededDraw('kriging values')
    const data = { places, values: Float64Array.from({ length: count }, draw), readingVariance: null }
    const nodes = gridNodes(1000, 1000, targets)
    const ours = processorMs(1, () => {
      if (near === null) krige(krigingSystem(data, model), nodes)
      else krigeNearest({ data, structures: model }, nodes, near)
    })
    const reference = gstat ? gstatMs(count, targets, near) : null
    return {
      what: `ordinary kriging with variance, ${count} readings, ${targets} nodes${near === null ? '' : `, ${near} neighbours`}, against gstat`,
      ours: `${ours.toFixed(0)} ms`,
      reference: reference === null ? null : `${reference.toFixed(0)} ms`,
      ratio: reference === null ? null : ours / reference,
      aim,
    }
  })
}

const gstatInstalled = (): boolean => spawnSync('Rscript', ['-e', 'library(gstat)'], { stdio: 'ignore' }).status === 0

/** Processor time gstat takes for a question of the same size and model, without R's start. */
function gstatMs(count: number, targets: number, near: number | null): number {
  const side = Math.round(Math.sqrt(targets))
  const script = `suppressMessages({library(sp); library(gstat)}); set.seed(1)
d <- data.frame(x=1000*runif(${count}), y=1000*runif(${count}), z=runif(${count})); coordinates(d) <- ~x+y
g <- expand.grid(x=((1:${side})-0.5)*1000/${side}, y=((1:${side})-0.5)*1000/${side}); coordinates(g) <- ~x+y
t <- system.time(krige(z~1, d, g, vgm(0.6,"Exp",150,0.05), nmax=${near ?? 'Inf'}, debug.level=0)); cat(1000*(t[[1]]+t[[2]]))`
  return Number(spawnSync('Rscript', ['-e', script], { encoding: 'utf8' }).stdout)
}
