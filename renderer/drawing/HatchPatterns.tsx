import { memo } from 'react'
import type { HatchName } from '../../shared-types/figure.ts'
import { type HatchLines, type HatchStipple, hatches, isSolid } from '../../shared-types/tokens.ts'

interface HatchPatternsProps {
  /** Starts the ids, so that several drawings stand on one page. */
  readonly prefix: string
  /** Pixels per unit of the group that is filled; the pattern is shrunk by as much, so that it never scales. */
  readonly pixelsPerUnit: number
  /** Hatches that are filled with; all of them where it is left out. Text, so that an equal choice is known as equal. */
  readonly only?: string
}

/** Fill of a hatch, or null where the metal is left clean. */
export function hatchFill(prefix: string, hatch: HatchName): string | null {
  if (hatches[hatch] === null) return null
  return isSolid(hatches[hatch]) ? 'var(--ink)' : `url(#${prefix}-${hatch})`
}

function Lines({ lines }: { readonly lines: HatchLines }) {
  const { pitchPx, weightPx, dashPx, pairGapPx } = lines
  const length = dashPx === null ? pitchPx : dashPx[0] + dashPx[1]
  const stroke = {
    style: { strokeWidth: `calc(${weightPx}px * var(--sheet-line))` },
    ...(dashPx === null ? {} : { strokeDasharray: dashPx.join(' ') }),
  }
  const across = lines.angles.length > 1
  return (
    <g className="hatch-ink">
      <path d={`M0 ${pitchPx / 2} H${length}`} {...stroke} />
      {pairGapPx === null ? null : <path d={`M0 ${pitchPx / 2 + pairGapPx} H${length}`} {...stroke} />}
      {across ? <path d={`M${pitchPx / 2} 0 V${pitchPx}`} {...stroke} /> : null}
    </g>
  )
}

function Stipple({ stipple }: { readonly stipple: HatchStipple }) {
  const { radiusPx, quincunxPx } = stipple
  return (
    <g className="hatch-dots">
      <circle cx={quincunxPx / 4} cy={quincunxPx / 4} r={radiusPx} />
      <circle cx={(3 * quincunxPx) / 4} cy={(3 * quincunxPx) / 4} r={radiusPx} />
    </g>
  )
}

/** The hatches as patterns in screen pixels. */
export const HatchPatterns = memo(function HatchPatterns({ prefix, pixelsPerUnit, only }: HatchPatternsProps) {
  const wanted = only?.split(' ')
  const names = (Object.keys(hatches) as HatchName[]).filter((name) => wanted?.includes(name) ?? true)
  return (
    <defs>
      {names.map((name) => {
        const hatch = hatches[name]
        if (hatch === null || isSolid(hatch)) return null
        const isLines = hatch.kind === 'lines'
        const height = isLines ? hatch.pitchPx : hatch.quincunxPx
        const dash = isLines ? hatch.dashPx : null
        const turn = isLines ? -(hatch.angles[0] ?? 0) : 0
        return (
          <pattern
            key={name}
            data-turn={turn}
            data-unit={pixelsPerUnit}
            id={`${prefix}-${name}`}
            patternUnits="userSpaceOnUse"
            width={dash === null ? height : dash[0] + dash[1]}
            height={height}
            patternTransform={`scale(${1 / pixelsPerUnit}) rotate(${turn})`}
          >
            {isLines ? <Lines lines={hatch} /> : <Stipple stipple={hatch} />}
          </pattern>
        )
      })}
    </defs>
  )
})
