import { memo } from 'react'
import type { CalloutMark } from '../../shared-types/figure.ts'
import { decoration } from './decoration.ts'
import { type PlanScale, sheetOnScreen } from './plan-scale.ts'

const RING_PX = 8.5

/** The leader starts at the rim of the ring, not in its middle. */
function leaderPath(callout: CalloutMark, scale: PlanScale): string {
  const ring = sheetOnScreen(callout.ring, scale)
  const bends = callout.leader.map((point) => sheetOnScreen(point, scale))
  const next = bends.find((point) => Math.hypot(point.x - ring.x, point.y - ring.y) > RING_PX)
  if (next === undefined) return ''
  const away = Math.hypot(next.x - ring.x, next.y - ring.y)
  const start = {
    x: ring.x + ((next.x - ring.x) / away) * RING_PX,
    y: ring.y + ((next.y - ring.y) / away) * RING_PX,
  }
  return [start, ...bends.slice(bends.indexOf(next))]
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
    .join(' ')
}

interface CalloutProps {
  readonly callout: CalloutMark
  readonly scale: PlanScale
  readonly inHand: boolean
}

const Callout = memo(function Callout({ callout, scale, inHand }: CalloutProps) {
  const { x, y } = sheetOnScreen(callout.ring, scale)
  const end = callout.leader.at(-1)
  const dot = end === undefined ? null : sheetOnScreen(end, scale)
  const toRight = callout.textSide === 'right'
  const textX = x + (toRight ? RING_PX + 4 : -RING_PX - 4)
  const path = leaderPath(callout, scale)
  return (
    <g className={inHand ? 'callout is-in-hand' : 'callout'} data-panel={callout.panelId}>
      {path === '' ? null : (
        <>
          <path className="callout-leader-halo" d={path} />
          <path className="callout-leader" d={path} />
          {dot === null ? null : <circle className="callout-dot" cx={dot.x} cy={dot.y} r={1.7} />}
        </>
      )}
      <circle className="callout-ring" cx={x} cy={y} r={RING_PX} />
      <text className="callout-figure" x={x} y={y + 3.6} textAnchor="middle">
        {callout.figure}
      </text>
      {callout.name === '' ? null : (
        <text className="callout-text" textAnchor={toRight ? 'start' : 'end'}>
          <tspan className="callout-name" x={textX} y={y - 1.5}>
            {callout.name}
          </tspan>
          <tspan x={textX} y={y + 11.5}>
            {callout.word}
          </tspan>
        </text>
      )}
    </g>
  )
})

interface CalloutsProps {
  readonly callouts: readonly CalloutMark[]
  readonly scale: PlanScale
  readonly inHand: string | null
}

/** Numbered rings with their leaders; the name and the state word beside. Said again by each panel's own name. */
export const Callouts = memo(function Callouts({ callouts, scale, inHand }: CalloutsProps) {
  return (
    <g className="callouts" {...decoration}>
      {callouts.map((callout) => (
        <Callout
          key={`${callout.view}${callout.panelId}`}
          callout={callout}
          scale={scale}
          inHand={callout.panelId === inHand}
        />
      ))}
    </g>
  )
})
