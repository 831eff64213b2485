import type { PanelId } from './panel.ts'
import type { BodyStyle, JointKind } from './words.ts'

/** Places along a gap where its width is taken. */
export type JointStation = 'upper' | 'middle' | 'lower' | 'front' | 'rear' | 'left' | 'centre' | 'right'

/** How two panels of a body meet. Reference data, trade knowledge recalled; not part of a record. */
export interface Joint {
  /** The two ids in alphabetical order, such as `front-door+front-side`. */
  readonly id: string
  /** Ids without their side, in alphabetical order. */
  readonly panels: readonly [PanelId, PanelId]
  /** The usual kind. */
  readonly kind: JointKind
  /** Other kinds met on cars of the time. */
  readonly mayBe: readonly JointKind[]
  /**
   * `same`: left meets left and right meets right. `each`: either side meets the panel that has none. `across`: left
   * meets right of the same panel. `centre`: neither has a side.
   */
  readonly side: 'same' | 'each' | 'across' | 'centre'
  readonly bodies: readonly BodyStyle[]
  /** Where a gap is measured; null for what is no gap. */
  readonly measureAt: readonly JointStation[] | null
}

/** A gap one measures, by name. */
export interface GapJoint {
  readonly id: string
  /** "shut line between front door and front wing". */
  readonly name: string
  /** True when the car has it left and right. */
  readonly bothSides: boolean
  readonly measureAt: readonly JointStation[]
}
