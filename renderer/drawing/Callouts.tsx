import { memo } from 'react'
import type { CalloutMark } from '../../shared-types/figure.ts'
import { decoration } from './decoration.ts'
import { KeepsSize } from './KeepsSize.tsx'
import { type PlanScale, sheetOnScreen } from './plan-scale.ts'

const RING_PX = 8.5

interface CalloutProps {
  readonly callout: CalloutMark
  readonly scale: PlanScale
  readonly inHand: boolean
}

const Callout = memo(function Callout({ callout, scale, inHand }: CalloutProps) {
  const ring = sheetOnScreen(callout.ring, scale)
  const end = callout.leader.at(-1)
  const dot = end === undefined ? null : sheetOnScreen(end, scale)
  const toRight = callout.textSide === 'right'
  const textX = toRight ? RING_PX + 4 : -RING_PX - 4
  // From the middle of the ring, which covers it up to the rim at every zoom.
  const leader =
    dot === null ? '' : `M${ring.x.toFixed(1)} ${ring.y.toFixed(1)}L${dot.x.toFixed(1)} ${dot.y.toFixed(1)}`
  return (
    <g className={inHand ? 'callout is-in-hand' : 'callout'} data-panel={callout.panelId}>
      {dot === null ? null : (
        <>
          <path className="callout-leader-halo" d={leader} />
          <path className="callout-leader" d={leader} />
          <KeepsSize {...dot}>
            <circle className="callout-dot" r={1.7} />
          </KeepsSize>
        </>
      )}
      <KeepsSize {...ring}>
        <circle className="callout-ring" r={RING_PX} />
        <text
          className={callout.figure.length > 2 ? 'callout-figure is-long' : 'callout-figure'}
          y={3.6}
          textAnchor="middle"
        >
          {callout.figure}
        </text>
        {callout.name === '' ? null : (
          <text className="callout-text" textAnchor={toRight ? 'start' : 'end'}>
            <tspan className="callout-name" x={textX} y={-1.5}>
              {callout.name}
            </tspan>
            <tspan x={textX} dy="1.13em">
              {callout.word}
            </tspan>
          </text>
        )}
      </KeepsSize>
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
