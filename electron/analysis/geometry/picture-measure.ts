import type { z } from 'zod'
import type { PictureQuestion, pictureMeasure } from '../../../shared-types/measuring.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { seededDraw } from '../sampling/seeded-draws.ts'
import { distributionOf } from '../statistics/drawn-distribution.ts'
import { normalQuantile } from '../statistics/quantiles.ts'
import { QuickNormals } from '../statistics/quick-normals.ts'
import { checkPicture } from './check-picture.ts'
import { mapped } from './homography.ts'
import { measureOn, planeFollowing } from './measure-on-plane.ts'
import { allInputs, pickedInputs } from './plane-inputs.ts'
import type { NoPlane } from './rectified-plane.ts'

const cures: Record<NoPlane, string> = {
  'on a line': 'The points of the plane lie on one line: choose four that span it, as corners do.',
  'no focal length':
    'Only one pair of sides converges, so the focal length cannot be found: enter it in pixels, or pick four known points.',
  'not square':
    'With square corners these sides cannot converge like that: check the order of the corners and that the picture is not cropped, or enter the focal length in pixels.',
}
const units = { distance: 'mm', angle: '°', 'circle diameter': 'mm', area: 'mm²' } as const
/** Draws that give no value, as a share, above which the picks are too inexact for a plane. */
const MOST_FAILED = 0.001

/**
 * A measure on a plane of a photograph. First order: partial derivatives by central differences (JCGM 100:2008, 5.1.3 with
 * note 2); drawn: every pick and reference disturbed at once (JCGM 101). Both are given; where they differ by more than a
 * tenth the drawn one counts.
 * @throws ProblemError when the picks give no plane or no value, with the cure.
 */
export function measureInPicture(question: PictureQuestion): z.infer<typeof pictureMeasure.output> {
  checkPicture(question)
  const { plane, wanted, picture, pickPx, distortionPx, coverage, offPlane } = question
  const eachPx = distortionPx === null ? pickPx : Math.hypot(pickPx, distortionPx / Math.sqrt(3))
  const { estimates, standard: us } = allInputs(plane, wanted.points, eachPx)
  const before = estimates.length - 2 * wanted.points.length
  const { widthPx, heightPx } = picture
  const middle = { x: widthPx / 2, y: heightPx / 2, diagonalPx: Math.hypot(widthPx, heightPx) }
  const start = Float64Array.from(estimates)
  const planeOf = planeFollowing(plane, start, middle)
  const places = new Float64Array(start.length - before)
  const valueFrom = (inputs: Float64Array): number => {
    const h = planeOf(inputs)
    if (typeof h === 'string') return Number.NaN
    const reference = Math.sign(mapped(h, inputs[0] ?? 0, inputs[1] ?? 0).w)
    return measureOn(h, wanted.kind, { inputs, at: before, places }, reference)
  }
  const found = planeOf(start)
  if (typeof found === 'string') throw new ProblemError('input-refused', cures[found], { field: 'plane' })
  const value = valueFrom(start)
  if (!Number.isFinite(value))
    throw new ProblemError(
      'input-refused',
      'A point lies beyond where the plane vanishes: check the order of the corners.',
      {
        field: 'wanted',
      },
    )
  const picks = pickedInputs(plane, wanted.points.length)
  const squares = squaresOf(valueFrom, start, us)
  const picked = Math.sqrt(summed(squares.filter((_, at) => picks[at])))
  const reference = Math.sqrt(summed(squares.filter((_, at) => !picks[at])))
  const standard = Math.hypot(picked, reference)
  const drawn = distributionOf(drawValues(valueFrom, start, us, question), coverage)
  const agree = Math.abs(standard / drawn.standard - 1) <= 0.1
  return {
    value,
    unit: units[wanted.kind],
    standard,
    drawn,
    agree,
    expanded: agree ? normalQuantile((1 + coverage) / 2) * standard : Math.max(drawn.high - value, value - drawn.low),
    coverage,
    parts: {
      picking: (picked * pickPx) / eachPx,
      reference,
      distortion: distortionPx === null ? 0 : (picked * distortionPx) / Math.sqrt(3) / eachPx,
    },
    offPlaneError: offPlane === null ? null : offPlaneError(wanted.kind, value, offPlane),
    notes: notesFor(question, agree),
  }
}

type ValueOf = (inputs: Float64Array) => number

const summed = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/** Square of what each input alone puts into the value, first order. */
function squaresOf(valueFrom: ValueOf, start: Float64Array, us: readonly number[]): readonly number[] {
  const inputs = start.slice()
  return us.map((u, at) => {
    if (u === 0) return 0
    const own = start[at] ?? 0
    const step = u / 100
    inputs[at] = own + step
    const above = valueFrom(inputs)
    inputs[at] = own - step
    const below = valueFrom(inputs)
    inputs[at] = own
    return (((above - below) / (2 * step)) * u) ** 2
  })
}

function drawValues(
  valueFrom: ValueOf,
  start: Float64Array,
  us: readonly number[],
  question: PictureQuestion,
): Float64Array {
  const normals = new QuickNormals(seededDraw(question.seed))
  const deviations = new Float64Array(start.length)
  const standard = Float64Array.from(us)
  const values = new Float64Array(question.draws)
  const inputs = start.slice()
  let kept = 0
  for (let draw = 0; draw < question.draws; draw += 1) {
    normals.fill(deviations, deviations.length)
    for (let at = 0; at < start.length; at += 1)
      inputs[at] = (start[at] as number) + (standard[at] as number) * (deviations[at] as number)
    const value = valueFrom(inputs)
    if (!Number.isFinite(value)) continue
    values[kept] = value
    kept += 1
  }
  if (kept < question.draws * (1 - MOST_FAILED))
    throw new ProblemError(
      'input-refused',
      'The picks are too inexact to settle this plane: choose points further apart, pick them closer, or enter the focal length.',
      { field: 'plane' },
    )
  return values.subarray(0, kept)
}

/** Similar triangles: a thing nearer by the offset looks larger by offset / (distance - offset); areas twice that. */
function offPlaneError(
  kind: PictureQuestion['wanted']['kind'],
  value: number,
  off: NonNullable<PictureQuestion['offPlane']>,
) {
  if (kind === 'angle') return null
  if (off.offsetMm >= off.cameraMm)
    throw new ProblemError(
      'input-refused',
      'The offset reaches the camera: enter how far the camera was from the plane.',
      {
        field: 'offPlane',
      },
    )
  const nearer = off.cameraMm / (off.cameraMm - off.offsetMm)
  return value * (kind === 'area' ? nearer ** 2 - 1 : nearer - 1)
}

function notesFor({ plane, distortionPx, offPlane }: PictureQuestion, agree: boolean): string[] {
  return [
    ...(plane.kind === 'scale bar' ? ['Holds only if the camera looked at the plane squarely.'] : []),
    ...(plane.kind === 'two pairs of parallels' && plane.focalLengthPx === null
      ? ['Holds only if the corners are square and the picture is not cropped.']
      : []),
    ...(distortionPx === null ? ['The distortion of the lens is not known and not included.'] : []),
    ...(offPlane === null ? ['Holds only for what lies on the plane; how far off it may be was not stated.'] : []),
    ...(agree ? [] : ['First order and drawing differ by more than a tenth: the drawn interval counts.']),
  ]
}
