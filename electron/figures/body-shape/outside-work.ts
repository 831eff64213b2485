import type { BodyForm } from './body-form.ts'
import type { Face } from './face.ts'
import type { WindowLine } from './glasshouse-lines.ts'
import type { LineNet } from './line-net.ts'
import type { Cubic3 } from './space.ts'

/** A window: the part it lies in, and its edge on the left half or across the middle. */
export interface Glass {
  readonly part: string
  readonly middle: boolean
  readonly edge: readonly Cubic3[]
  /** Of a window across the middle: its left half, closed at the centre line, as the side view shows it. */
  readonly half: readonly Cubic3[]
}

/** A panel that lies in another one: flaps, load door, sliding roof. */
export interface SetPanel {
  readonly panelId: string
  readonly within: string
  readonly edge: readonly Cubic3[]
  /** Views that show it. */
  readonly views: readonly ('left' | 'right' | 'roof' | 'rear')[]
}

/** Everything the views of the outside are drawn from. */
export interface OutsideWork {
  readonly form: BodyForm
  readonly net: LineNet
  readonly faces: readonly Face[]
  readonly windows: readonly WindowLine[]
  readonly glass: readonly Glass[]
  readonly set: readonly SetPanel[]
  readonly conditions: ReadonlySet<string>
}
