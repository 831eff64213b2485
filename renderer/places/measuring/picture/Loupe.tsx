import type { PicturePoint } from '../../../../shared-types/measuring.ts'
import { PictureLines } from './PictureLines.tsx'
import type { PictureEntry } from './picture-entry.ts'
import type { PictureSize } from './picture-sight.ts'

/** Side of the loupe, screen pixels, and how many of them a picture pixel takes. */
const SIDE_PX = 168
export const LOUPE_TIMES = 6

interface LoupeProps {
  readonly address: string
  readonly size: PictureSize
  readonly at: PicturePoint
  readonly entry: PictureEntry
  readonly inHand: number | null
  /** Stands at the left while the cross is at the right. */
  readonly left: boolean
}

/** The surroundings of the cross, enlarged so that single pixels are seen. */
export function Loupe({ address, size, at, entry, inHand, left }: LoupeProps) {
  const seen = SIDE_PX / LOUPE_TIMES
  return (
    <svg
      className={left ? 'picture-loupe is-left' : 'picture-loupe'}
      width={SIDE_PX}
      height={SIDE_PX}
      viewBox={`${at.x - seen / 2} ${at.y - seen / 2} ${seen} ${seen}`}
      aria-hidden="true"
    >
      <image href={address} width={size.widthPx} height={size.heightPx} preserveAspectRatio="none" />
      <PictureLines entry={entry} perPx={1 / LOUPE_TIMES} inHand={inHand} />
      <path
        className="picture-cross-ground"
        d={`M${at.x - seen} ${at.y}H${at.x + seen}M${at.x} ${at.y - seen}V${at.y + seen}`}
      />
      <path
        className="picture-cross"
        d={`M${at.x - seen} ${at.y}H${at.x + seen}M${at.x} ${at.y - seen}V${at.y + seen}`}
      />
    </svg>
  )
}
