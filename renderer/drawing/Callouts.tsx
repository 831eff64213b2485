import { memo } from 'react'
import type { CalloutMark } from '../../shared-types/figure.ts'
import { KeepsSize } from './KeepsSize.tsx'
import { type PlanScale, sheetOnScreen } from './plan-scale.ts'

const RING_PX = 8.5

interface CalloutProps {
  readonly callout: CalloutMark
  readonly scale: PlanScale
  readonly inHand: boolean
}

const Callout = memo(function Callout({ callout, scale, inHand }: CalloutProps) {
  const toRight = callout.textSide === 'right'
  const textX = toRight ? RING_PX + 4 : -RING_PX - 4
  return (
    <KeepsSize
      {...sheetOnScreen(callout.ring, scale)}
      className={inHand ? 'callout is-in-hand' : 'callout'}
      panelId={callout.panelId}
    >
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
  )
})

interface LeadersProps {
  readonly callouts: readonly CalloutMark[]
  readonly scale: PlanScale
}

/**
 * Leaders as one path, and the dots they end in as another. A leader starts in the middle of its ring, which covers it up
 * to the rim at every zoom; no leader crosses another or a ring, so they lie under all rings together.
 */
const Leaders = memo(function Leaders({ callouts, scale }: LeadersProps) {
  const ends = callouts.flatMap(({ ring, leader }) => {
    const end = leader.at(-1)
    if (end === undefined) return []
    const [from, to] = [sheetOnScreen(ring, scale), sheetOnScreen(end, scale)]
    return [{ from: `M${from.x.toFixed(1)} ${from.y.toFixed(1)}`, to: `${to.x.toFixed(2)} ${to.y.toFixed(2)}` }]
  })
  const lines = ends.map(({ from, to }) => `${from}L${to}`).join('')
  return (
    <>
      <path className="callout-leader-halo" d={lines} />
      <path className="callout-leader" d={lines} />
      <path className="callout-dots" d={ends.map(({ to }) => `M${to}h0`).join('')} />
    </>
  )
})

interface CalloutsProps extends LeadersProps {
  readonly width: number
  readonly height: number
}

/** First and last ring of each picture: after a zoom each picture is drawn anew in a frame of its own. */
const PICTURES = [
  [0, 20],
  [20, 40],
  [40, Number.POSITIVE_INFINITY],
] as const

/**
 * Numbered rings over all their leaders; the name and the state word beside. Said again by each panel's own name. There
 * are always as many pictures, also where a few rings leave some of them empty: one that came later would not stand where
 * the others have been moved to.
 */
export const Callouts = memo(function Callouts({ callouts, scale, width, height }: CalloutsProps) {
  return PICTURES.map(([from, to]) => (
    <svg key={from} className="plan-drawing plan-layer" width={width} height={height} aria-hidden="true">
      <g className="moves">{from === 0 ? <Leaders callouts={callouts} scale={scale} /> : null}</g>
      {callouts.slice(from, to).map((callout) => (
        <Callout key={`${callout.view} ${callout.panelId}`} callout={callout} scale={scale} inHand={false} />
      ))}
    </svg>
  ))
})

/** The callout of the panel in hand once more, over itself, in the accent: a step draws this one and leaves the others. */
export const CalloutInHand = memo(function CalloutInHand({ callouts, scale, width, height }: CalloutsProps) {
  return (
    <svg className="plan-drawing plan-layer plan-at-hand" width={width} height={height} aria-hidden="true">
      <g className="moves is-in-hand">
        <Leaders callouts={callouts} scale={scale} />
      </g>
      {callouts.map((callout) => (
        <Callout key={callout.view} callout={callout} scale={scale} inHand />
      ))}
    </svg>
  )
})
