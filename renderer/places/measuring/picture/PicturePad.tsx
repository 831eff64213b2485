import { type MouseEvent, type PointerEvent, useRef } from 'react'
import { useOwnWidth } from '../../../drawing/use-own-width.ts'
import { Loupe } from './Loupe.tsx'
import { PictureLines } from './PictureLines.tsx'
import { padAct } from './pad-keys.ts'
import { allPoints, letterOf, nextPoint, roleOf } from './picked-points.ts'
import type { PictureEntry } from './picture-entry.ts'
import type { PictureSize } from './picture-sight.ts'
import { usePicturePad } from './use-picture-pad.ts'

interface PicturePadProps {
  readonly id: string
  readonly address: string
  readonly size: PictureSize
  readonly name: string
  readonly entry: PictureEntry
  readonly set: (points: Partial<PictureEntry>) => void
}

/** Height of the frame as a share of its width, within what leaves room for the result below. */
const heightFor = (width: number, { widthPx, heightPx }: PictureSize): number =>
  Math.round(Math.min((width * heightPx) / widthPx, Math.max(260, window.innerHeight * 0.58)))

function nextWords(entry: PictureEntry, inHand: number | null): string {
  if (inHand !== null) return `${letterOf(inHand)} in hand: arrows move it, Enter lays it down`
  const next = nextPoint(entry)
  return next === null ? 'all points are picked' : `next: ${letterOf(next)}, ${roleOf(entry, next)}`
}

/** The photograph to pick points on: by pointer, or by a cross that the arrows move, with a loupe on its surroundings. */
export function PicturePad({ id, address, size, name, entry, set }: PicturePadProps) {
  const [frame, width] = useOwnWidth<HTMLDivElement>()
  const ground = useRef<HTMLDivElement>(null)
  const height = heightFor(width, size)
  const pad = usePicturePad({ ground, size, width, height, entry, set })
  const { sight, cross, inHand } = pad
  const left = sight.middle.x - (width * sight.perPx) / 2
  const top = sight.middle.y - (height * sight.perPx) / 2
  const sees = { viewBox: `${left} ${top} ${width * sight.perPx} ${height * sight.perPx}`, width, height }
  const at = (event: MouseEvent) => {
    const box = ground.current?.getBoundingClientRect()
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) }
  }
  const dragging = (event: PointerEvent) => event.currentTarget.hasPointerCapture(event.pointerId)
  return (
    <>
      <div
        id={id}
        ref={frame}
        className="picture-pad"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a role of application takes the keys itself
        tabIndex={0}
        aria-label={`${name}. Arrows move the cross by one dot of the picture, with Shift by more; Enter sets a point; a letter takes that point in hand; plus and minus zoom.`}
        aria-describedby={`${id}-next`}
        style={{ height }}
        onKeyDown={(event) => {
          const held = event.ctrlKey || event.altKey || event.metaKey
          const asked = padAct({ key: event.key, shiftKey: event.shiftKey, held }, entry, inHand)
          if (asked === null) return
          event.preventDefault()
          event.stopPropagation()
          pad.act(asked)
        }}
      >
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: the keys are heard by the pad round it */}
        {/* biome-ignore lint/a11y/noStaticElementInteractions: see above */}
        <div ref={ground} className="picture-ground" onClick={(event) => pad.press(at(event))}>
          <svg {...sees} aria-hidden="true">
            <image href={address} width={size.widthPx} height={size.heightPx} preserveAspectRatio="none" />
          </svg>
        </div>
        <svg {...sees} className="picture-over" aria-hidden="true">
          <PictureLines entry={entry} perPx={sight.perPx} inHand={inHand} />
          <g transform={`translate(${cross.x} ${cross.y}) scale(${sight.perPx})`}>
            <path className="picture-cross-ground" d="M-22 0H-5M5 0H22M0 -22V-5M0 5V22" />
            <path className="picture-cross" d="M-22 0H-5M5 0H22M0 -22V-5M0 5V22" />
          </g>
          {allPoints(entry).map(({ index, point }) => (
            <circle
              key={index}
              className="picture-handle"
              cx={point.x}
              cy={point.y}
              r={14 * sight.perPx}
              onPointerDown={(event) => {
                event.currentTarget.setPointerCapture(event.pointerId)
                pad.take(index)
              }}
              onPointerMove={(event) => {
                if (dragging(event)) pad.drag(at(event))
              }}
            />
          ))}
        </svg>
        <Loupe address={address} size={size} at={cross} entry={entry} inHand={inHand} left={cross.x > sight.middle.x} />
      </div>
      <p className="picture-foot">
        <span id={`${id}-next`} role="status">
          {nextWords(entry, inHand)}
        </span>
        <span className="figures">{`cross ${Math.round(cross.x)} · ${Math.round(cross.y)}`}</span>
      </p>
    </>
  )
}
