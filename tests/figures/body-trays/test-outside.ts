import type { BodyFrame } from '../../../electron/figures/body-shape/body-frame.ts'
import type { OutsideShapes } from '../../../electron/figures/body-trays/outside-shapes.ts'
import type { Point } from '../../../electron/figures/cubic-path.ts'
import { backwards, type Curve, joined, mirroredDown, rounded, smooth } from '../../../electron/figures/curve.ts'

const whole = (half: Curve): Curve => joined(half, backwards(mirroredDown(half)))

/** Plain outlines for a frame, in the places the outside sheet would have them; made for these tests. */
export function outsideOf(frame: BodyFrame): OutsideShapes {
  const { body } = frame
  const upright = body === 'estate' || body === 'van'
  const deck = body !== 'pickup' && !upright
  return {
    frontDoor: frontDoor(frame),
    rearDoor: frame.rearDoorRearMm === null ? null : rearDoor(frame, frame.rearDoorRearMm),
    bonnet: lid(frame.noseMm + 150, frame.cowlMm, frame.bonnetFrontHalfMm, frame.bonnetRearHalfMm),
    bootLid: deck
      ? lid(
          Math.min(frame.cabinRearMm + 330, frame.tailMm - 400),
          frame.tailMm - 40,
          frame.lidHalfMm * 0.94,
          frame.lidHalfMm,
        )
      : null,
    tailDoor: body === 'estate' ? tailDoor(frame) : null,
    cargoDoor: body === 'van' ? cargoDoor(frame) : null,
    roofEdge: roofEdge(frame),
  }
}

function frontDoor(frame: BodyFrame) {
  const { doorFrontMm: a, doorRearMm: b, beltHeightMm: belt } = frame
  const [foot, top] = [frame.floorHeightMm + 30, frame.roofHeightMm - 80]
  const rake = (top - belt) * Math.tan((frame.dimensions.screenRakeDegrees * Math.PI) / 180)
  const from = Math.min(a + rake * 0.9, b - 320)
  if (frame.body === 'convertible') {
    const edge: Point[] = [
      [a + 20, -foot],
      [a - 10, -(foot + belt) / 2],
      [a + 10, -belt],
      [b, -belt],
      [b - 10, -foot - 200],
      [b - 40, -foot],
    ]
    return { outline: rounded(edge, 24), glass: null }
  }
  const edge: Point[] = [
    [a + 20, -foot],
    [a - 6, -(foot + belt) / 2],
    [a + 20, -belt],
    [from, -top],
    [b - 10, -top],
    [b + 10, -belt],
    [b - 36, -foot],
  ]
  const glass: Point[] = [
    [a + 100, -belt - 20],
    [from + 50, -top + 46],
    [b - 60, -top + 46],
    [b - 48, -belt - 20],
  ]
  return { outline: rounded(edge, [30, 60, 20, 70, 40, 30, 60]), glass: rounded(glass, 30) }
}

function rearDoor(frame: BodyFrame, rear: number) {
  const [foot, top, belt] = [frame.floorHeightMm + 30, frame.roofHeightMm - 84, frame.beltHeightMm]
  const a = frame.doorRearMm + 8
  const arch = frame.rearAxleMm - frame.dimensions.archRadiusMm
  const edge: Point[] = [
    [a - 36, -foot],
    [a + 10, -belt],
    [a - 4, -top],
    [rear - 160, -top],
    [rear, -belt],
    [Math.max(arch, a + 300), -foot - 220],
    [Math.max(arch - 60, a + 260), -foot],
  ]
  const glass: Point[] = [
    [a + 60, -belt - 20],
    [a + 46, -top + 46],
    [rear - 210, -top + 46],
    [rear - 90, -belt - 20],
  ]
  return { outline: rounded(edge, 36), glass: rounded(glass, 30) }
}

const lid = (from: number, to: number, front: number, rear: number): Curve =>
  whole(
    joined(
      smooth(
        [
          [from, 0],
          [from + 6, front * 0.6],
          [from + 40, front],
        ],
        [0, 1],
      ),
      smooth([
        [from + 40, front],
        [(from + to) / 2, (front + rear) / 2 + 16],
        [to - 20, rear],
      ]),
      smooth(
        [
          [to - 20, rear],
          [to, rear * 0.5],
          [to + 6, 0],
        ],
        undefined,
        [0, -1],
      ),
    ),
  )

function tailDoor(frame: BodyFrame) {
  const half = frame.lidHalfMm
  const [foot, top, belt] = [-frame.floorHeightMm - 240, -frame.roofHeightMm + 90, -frame.beltHeightMm]
  const edge: Point[] = [
    [-half, foot],
    [-half - 10, belt],
    [-half + 90, top],
    [half - 90, top],
    [half + 10, belt],
    [half, foot],
  ]
  const glass: Point[] = [
    [-half + 70, belt - 30],
    [-half + 150, top + 70],
    [half - 150, top + 70],
    [half - 70, belt - 30],
  ]
  return { outline: rounded(edge, 60), glass: rounded(glass, 50) }
}

function cargoDoor(frame: BodyFrame) {
  const half = frame.lidHalfMm
  const [foot, top, belt] = [-frame.floorHeightMm - 60, -frame.roofHeightMm + 150, -frame.beltHeightMm]
  const edge: Point[] = [
    [-half, foot],
    [-half - 8, belt],
    [-half + 70, top],
    [-4, top - 16],
    [-4, foot],
  ]
  const glass: Point[] = [
    [-half + 90, belt - 130],
    [-half + 130, top + 110],
    [-90, top + 104],
    [-90, belt - 130],
  ]
  return { outline: rounded(edge, [50, 40, 80, 14, 14]), glass: rounded(glass, 50) }
}

function roofEdge(frame: BodyFrame): Curve {
  const { noseMm: n, tailMm: t, halfWidthMm: w } = frame
  return whole(
    smooth(
      [
        [n + 20, 0],
        [n + 14, w * 0.4],
        [n + 16, w * 0.74],
        [n + 60, w * 0.9],
        [n + 220, w * 0.97],
        [frame.frontAxleMm, w],
        [(n + t) / 2, w - 10],
        [frame.rearAxleMm, w],
        [t - 240, w * 0.95],
        [t - 70, w * 0.87],
        [t - 16, w * 0.72],
        [t, w * 0.4],
        [t + 4, 0],
      ],
      [0, 1],
      [0, -1],
    ),
  )
}
