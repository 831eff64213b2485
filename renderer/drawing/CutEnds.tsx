import type { CutLine } from '../../shared-types/coating-cut.ts'
import { KeepsSize } from './KeepsSize.tsx'
import type { MapSheet } from './map-sheet.ts'

interface CutEndsProps {
  readonly line: CutLine
  readonly sheet: MapSheet
  readonly nameOf: (end: CutEnd) => string
}

export type CutEnd = keyof CutLine

const ROOM_PX = 22
const END_PX = 5
/** A shape in an SVG cannot be a button element. */
const asButton = { role: 'button' } as const

/** Both ends of the line, to be dragged or moved by arrow keys. */
export function CutEnds({ line, sheet, nameOf }: CutEndsProps) {
  return (['from', 'to'] as const).map((end) => (
    <KeepsSize key={end} {...sheet.place(line[end])} className="cut-end">
      <g {...asButton} aria-label={nameOf(end)} tabIndex={0} data-cut-end={end}>
        <circle className="cut-end-room" r={ROOM_PX} />
        <circle className="cut-end-mark" r={END_PX} />
        <text x={END_PX + 3} y={-END_PX}>
          {end === 'from' ? '1' : '2'}
        </text>
      </g>
    </KeepsSize>
  ))
}
