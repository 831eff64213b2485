import { useId } from 'react'
import type { FigureSpan, TimeLineFigure, TimeLineFigureRow } from '../../shared-types/time-line-view.ts'
import { HatchPatterns, hatchFill } from './HatchPatterns.tsx'
import { useOwnWidth } from './use-own-width.ts'
import { useLetterScale } from './use-sheet-width.ts'
import './time-line.css'

const ROW_PX = 19
const AXIS_PX = 34
const BAR_PX = 9
const LEAST_BAR_PX = 3
const CONFLICT_PX = 36
const RING_PX = 8
/** Share of the width for the names of rows, and for what is read on them. */
const LABEL_SHARE = 0.2
const BESIDE_SHARE = 0.11

/** Where the axis stands on the drawing, px. */
interface Frame {
  readonly row: number
  readonly labelWidth: number
  readonly axisFrom: number
  readonly axisWidth: number
  at(place: number): number
}

/** Everything dated along one broken axis: what is said alone outlined, what is left solid, conflicts joined at the right. */
export function TimeLineDrawing({ figure }: { readonly figure: TimeLineFigure }) {
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const [element, width] = useOwnWidth<HTMLDivElement>()
  const letters = useLetterScale()
  const frame = frameOf(width, letters)
  const height = AXIS_PX * letters + figure.rows.length * frame.row + 6
  return (
    <div ref={element} className="time-line">
      {width === 0 ? null : (
        <svg
          className="plan-drawing time-line-drawing"
          width={width}
          height={height}
          role="img"
          aria-label={figure.textAlternative}
        >
          <HatchPatterns prefix={prefix} pixelsPerUnit={1} only="filler-through" />
          <Axis figure={figure} frame={frame} y={AXIS_PX * letters - 4} bottom={height} />
          {figure.rows.map((row, at) => (
            <Row key={row.id} row={row} frame={frame} y={AXIS_PX * letters + at * frame.row} prefix={prefix} />
          ))}
          {figure.conflicts.map(({ number, rows }) => (
            <Join key={number} number={number} rows={rows} frame={frame} top={AXIS_PX * letters} />
          ))}
        </svg>
      )}
    </div>
  )
}

function frameOf(width: number, letters: number): Frame {
  const labelWidth = Math.max(130, width * LABEL_SHARE)
  const axisFrom = labelWidth + Math.max(84, width * BESIDE_SHARE)
  const axisWidth = Math.max(60, width - axisFrom - CONFLICT_PX)
  return { row: ROW_PX * letters, labelWidth, axisFrom, axisWidth, at: (place) => axisFrom + place * axisWidth }
}

function Axis(props: {
  readonly figure: TimeLineFigure
  readonly frame: Frame
  readonly y: number
  readonly bottom: number
}) {
  const { figure, frame, y, bottom } = props
  const breaks = figure.stretches.slice(1).flatMap(({ from }, at) => [figure.stretches[at]?.to ?? 0, from])
  return (
    <g className="time-axis">
      {figure.ticks.map(({ at, kind }) => (
        <path
          key={`${at}`}
          className={kind === 'year' ? 'time-year' : 'time-month'}
          d={kind === 'year' ? `M${frame.at(at)} ${y - 7}V${bottom}` : `M${frame.at(at)} ${y - 3}V${y}`}
        />
      ))}
      {figure.stretches.map(({ from, to }) => (
        <path key={from} className="time-ink" d={`M${frame.at(from)} ${y}H${frame.at(to)}`} />
      ))}
      {breaks.map((at) => (
        <path key={at} className="time-ink" d={`M${frame.at(at) - 2} ${y + 4}L${frame.at(at) + 2} ${y - 4}`} />
      ))}
      {figure.ticks.map(({ at, kind, label }) =>
        label === '' ? null : (
          <text key={`${at} ${label}`} x={frame.at(at)} y={y - (kind === 'year' ? 10 : 5)}>
            {label}
          </text>
        ),
      )}
      {figure.building === null
        ? null
        : [figure.building.from, figure.building.to].map((edge) => (
            <path key={edge} className="time-building" d={`M${frame.at(edge)} ${y}V${bottom}`} />
          ))}
    </g>
  )
}

interface Bar {
  readonly x: number
  readonly width: number
}

const barOf = (frame: Frame, { from, to }: FigureSpan): Bar => ({
  x: frame.at(from),
  width: Math.max(LEAST_BAR_PX, frame.at(to) - frame.at(from)),
})

function Row(props: {
  readonly row: TimeLineFigureRow
  readonly frame: Frame
  readonly y: number
  readonly prefix: string
}) {
  const { row, frame, y, prefix } = props
  const middle = y + frame.row / 2
  const top = middle - BAR_PX / 2
  const rect = (span: FigureSpan, className: string, key?: string, fill?: string) => (
    <rect
      key={key}
      className={className}
      {...barOf(frame, span)}
      y={top}
      height={BAR_PX}
      {...(fill === undefined ? {} : { fill })}
    />
  )
  const clip = `${prefix}-${row.id.replace(/[^a-z0-9]/gi, '-')}`
  return (
    <g>
      <clipPath id={`${clip}-label`}>
        <rect x={0} y={y} width={frame.labelWidth - 6} height={frame.row} />
      </clipPath>
      <clipPath id={`${clip}-beside`}>
        <rect x={frame.labelWidth} y={y} width={frame.axisFrom - frame.labelWidth - 8} height={frame.row} />
      </clipPath>
      <text className={row.isBuilding ? 'is-strong' : ''} x={0} y={middle + 4} clipPath={`url(#${clip}-label)`}>
        {row.label}
      </text>
      <text className="is-figures" x={frame.labelWidth} y={middle + 4} clipPath={`url(#${clip}-beside)`}>
        {row.beside}
      </text>
      {row.leaves === null ? null : <Leaves span={row.leaves} frame={frame} middle={middle} />}
      {row.dropped.map((span) => rect(span, 'time-dropped', `dropped ${span.from}`))}
      {row.given.map((span, at) => rect(span, 'time-given', `given ${at} ${span.from}`))}
      {row.narrowed === null ? null : <Left row={row} span={row.narrowed} rect={rect} prefix={prefix} />}
    </g>
  )
}

/** What everything together leaves: solid where it holds, hatched where it is not of the car's days, open where not compared. */
function Left(props: {
  readonly row: TimeLineFigureRow
  readonly span: FigureSpan
  readonly rect: (span: FigureSpan, className: string, key?: string, fill?: string) => React.ReactElement
  readonly prefix: string
}) {
  const { row, span, rect, prefix } = props
  if (row.standing === 'not compared') return rect(span, 'time-given')
  if (row.standing === 'later than the car' || row.standing === 'earlier than usual')
    return (
      <>
        {rect(span, 'time-given')}
        {rect(span, 'time-hatched', undefined, hatchFill(prefix, 'filler-through') ?? 'none')}
      </>
    )
  return rect(span, 'time-left')
}

function Leaves({
  span,
  frame,
  middle,
}: {
  readonly span: FigureSpan
  readonly frame: Frame
  readonly middle: number
}) {
  const [from, to] = [frame.at(span.from), frame.at(span.to)]
  return <path className="time-leaves" d={`M${from} ${middle}H${to}M${from} ${middle - 3}v6M${to} ${middle - 3}v6`} />
}

function Join(props: {
  readonly number: number
  readonly rows: readonly number[]
  readonly frame: Frame
  readonly top: number
}) {
  const { number, rows, frame, top } = props
  const x = frame.at(1) + 14 + (number - 1) * 5
  const middles = rows.map((row) => top + row * frame.row + frame.row / 2)
  const [first, last] = [middles[0], middles.at(-1)]
  if (first === undefined || last === undefined) return null
  return (
    <g className="time-conflict">
      <path d={`M${x} ${first}V${last}${middles.map((y) => `M${frame.at(1) + 3} ${y}H${x}`).join('')}`} />
      <circle cx={x} cy={last} r={RING_PX} />
      <text x={x} y={last + 4}>
        {number}
      </text>
    </g>
  )
}

/** What the bars of the drawing mean, in words beside their patterns. */
export function TimeLineKey() {
  const prefix = useId().replace(/[^a-z0-9]/gi, '')
  const entries: readonly (readonly [string, React.ReactElement])[] = [
    ['said of it alone', <rect key="alone" className="time-given" x={1} y={2} width={20} height={BAR_PX} />],
    ['left by everything', <rect key="left" className="time-left" x={1} y={2} width={20} height={BAR_PX} />],
    [
      'later than the car, or earlier than usual',
      <g key="later">
        <rect className="time-given" x={1} y={2} width={20} height={BAR_PX} />
        <rect
          className="time-hatched"
          x={1}
          y={2}
          width={20}
          height={BAR_PX}
          fill={hatchFill(prefix, 'filler-through') ?? 'none'}
        />
      </g>,
    ],
    ['building the part would leave', <path key="leaves" className="time-leaves" d="M1 6.5H21M1 3.5v6M21 3.5v6" />],
    ['building, by everything', <path key="building" className="time-building" d="M11 0V13" />],
  ]
  return (
    <ul className="time-key">
      {entries.map(([words, mark]) => (
        <li key={words}>
          <svg className="plan-drawing time-line-drawing" width="22" height="13" aria-hidden="true">
            <HatchPatterns prefix={prefix} pixelsPerUnit={1} only="filler-through" />
            {mark}
          </svg>
          {words}
        </li>
      ))}
    </ul>
  )
}
