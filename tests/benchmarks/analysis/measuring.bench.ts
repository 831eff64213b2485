import { measureInPicture } from '../../../electron/analysis/geometry/picture-measure.ts'
import { pictureMeasure } from '../../../shared-types/measuring.ts'

const ROUNDS = 21

/** A distance on a plane of four known points with 10,000 draws of every pick and place. */
export function homographyDraws() {
  const corners = [
    [420, 310, 0, 0],
    [2510, 455, 600, 0],
    [2380, 1690, 600, 400],
    [505, 1820, 0, 400],
  ]
  const question = pictureMeasure.input.parse({
    picture: { widthPx: 4000, heightPx: 3000 },
    pickPx: 1.5,
    distortionPx: null,
    offPlane: null,
    plane: {
      kind: 'known points',
      points: corners.map(([x, y, xMm, yMm]) => ({ picture: { x, y }, plane: { xMm, yMm } })),
      uMm: 0.5,
    },
    wanted: {
      kind: 'distance',
      points: [
        { x: 900, y: 700 },
        { x: 2100, y: 1450 },
      ],
    },
    draws: 10_000,
  })
  const times = Array.from({ length: ROUNDS }, () => {
    const began = performance.now()
    if (!measureInPicture(question).agree) throw new Error('First order and drawing disagree.')
    return performance.now() - began
  })
  return [
    {
      what: 'homography of four points with 10,000 draws, ms',
      ours: times.toSorted((one, other) => one - other)[Math.floor(ROUNDS / 2)] ?? Number.NaN,
      reference: null,
      ratio: null,
      aim: 'under 50',
    },
  ]
}
