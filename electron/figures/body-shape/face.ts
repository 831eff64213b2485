import type { BodyForm } from './body-form.ts'
import type { FlankLine } from './flank-lines.ts'
import type { WindowLine } from './glasshouse-lines.ts'
import type { LineNet, Step } from './line-net.ts'

/** Views in which a face is turned to the eye: side, from above, front, back. */
export type Facing = 'side' | 'above' | 'front' | 'back'

/** A face of the left half: the part it belongs to (`.L` where the car has two), where it is seen, its edges in turn. */
export interface Face {
  readonly part: string
  readonly facing: readonly Facing[]
  readonly steps: readonly Step[]
}

/** Everything the faces of one body are put together from. */
export interface FaceWork {
  readonly net: LineNet
  readonly form: BodyForm
  readonly flank: readonly FlankLine[]
  readonly windows: readonly WindowLine[]
  /** Adds a face; the way is line, start node, end node, again and again. */
  readonly add: (part: string, facing: string, ...way: (readonly [line: string, from: string, to: string])[]) => void
}
