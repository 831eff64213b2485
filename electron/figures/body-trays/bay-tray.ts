import type { BodyFrame } from '../body-shape/body-frame.ts'
import type { Point } from '../cubic-path.ts'
import { ellipse } from '../curve.ts'
import { block } from '../ink-curve.ts'
import { bayInk } from './bay-ink.ts'
import { type BayPlaces, bayPlaces, towerPlace } from './bay-places.ts'
import { fitted } from './fitted.ts'
import { edge, middleTile, openTile, sideTile, straightEdge } from './tiles.ts'
import { bothSides, type Piece, piece, type TrayDrawing, tiled } from './tray-drawing.ts'

/** The bay from above, upright panels folded flat: stations along, the bulkhead folded back. */
export function bayTray(frame: BodyFrame, conditions: ReadonlySet<string>): TrayDrawing {
  const at = bayPlaces(frame)
  const { radiatorMm: front, bulkheadMm: rear, frontHalfMm, rearHalfMm, wingHalfMm: wing } = at
  const shoulder: Point = [at.radiatorTopMm + 16, frontHalfMm + 96]
  const radiatorTop = edge(
    [[at.radiatorTopMm, 0], [at.radiatorTopMm + 3, frontHalfMm * 0.6], shoulder],
    [0, 1],
    [0.3, 1],
  )
  const radiatorFoot = edge(
    [
      [front, 0],
      [front + 5, frontHalfMm * 0.6],
      [front, frontHalfMm],
    ],
    [0, 1],
  )
  const radiatorSide = edge([shoulder, [front, frontHalfMm]], [0.8, -0.2], [0.7, -1])
  const wingFoot = edge(
    [
      [front, frontHalfMm],
      [(front + rear) / 2, (frontHalfMm + rearHalfMm) / 2 - 6],
      [rear, rearHalfMm],
    ],
    [1, -0.04],
    [1, -0.02],
  )
  const wingTop = edge(
    [shoulder, [front + 60, wing - 150], [front + 260, wing - 46], [(front + rear) / 2 + 120, wing - 6], [rear, wing]],
    [0.5, 1],
    [1, 0.01],
  )
  const fold = edge([
    [rear, rearHalfMm],
    [rear + 5, (rearHalfMm + wing) / 2],
    [rear, wing],
  ])
  const foldMiddle = straightEdge([rear, 0], [rear, rearHalfMm])
  const top: Point = [at.bulkheadTopMm - 40, wing - 190]
  const bulkheadSide = edge([[rear, wing], [rear + 170, wing - 26], [rear + 350, wing - 96], top], [1, 0.01], [0.5, -1])
  const bulkheadTop = edge([[at.bulkheadTopMm, 0], [at.bulkheadTopMm - 8, wing * 0.42], top], [0, 1], [-0.5, 1])
  const tiles = tiled([
    middleTile('radiator-support', radiatorTop, radiatorSide, radiatorFoot),
    openTile(radiatorFoot, wingFoot, foldMiddle),
    sideTile('front-side-inner', radiatorSide, wingFoot, fold, wingTop),
    middleTile('front-bulkhead', foldMiddle, fold, bulkheadSide, bulkheadTop),
  ])
  const battery = block(rear + 84, rear + 282, -rearHalfMm - 190, -rearHalfMm + 96, 16)
  return {
    ...tiles,
    id: 'bay',
    sheetName: 'Engine bay',
    viewName: 'Engine bay from above, upright panels folded flat',
    pieces: [...tiles.pieces, ...towers(at, conditions), piece('battery-tray', battery, 'front-bulkhead')],
    ink: bayInk(frame, at, conditions),
    margin: [280, 140],
  }
}

function towers(at: BayPlaces, conditions: ReadonlySet<string>): Piece[] {
  return bothSides('spring-tower', ellipse(...towerPlace(at)), 'front-side-inner').filter(({ panelId }) =>
    fitted(conditions, 'front-spring-tower', panelId.endsWith('.L') ? 'L' : 'R'),
  )
}
