import { useId, useMemo } from 'react'
import type { FigureSpan, TimeLineFigure, TimeLineFigureRow } from '../../shared-types/time-line-view.ts'
import { fittedLines } from './fitted-lines.ts'
import { HatchPatterns, hatchFill } from './HatchPatterns.tsx'
import { textWidths } from './text-widths.ts'
import { useOwnWidth } from './use-own-width.ts'
import { useLetterScale } from './use-sheet-width.ts'
import './time-line.css'

const ROW_PX = 19
/** From line to line of a name that needs more than one. */
const LINE_PX = 15
const AXIS_PX = 34
const BAR_PX = 9
const LEAST_BAR_PX = 3
const CONFLICT_PX = 36
const RING_PX = 8
/** Share of the width for the names of rows, and for what is read on them. */
const LABEL_SHARE = 0.2
const BESIDE_SHARE = 0.11

/** A row of the figure with its words broken to the room they have, and where it stands. */
interface PlacedRow {
  readonly row: TimeLineFigureRow
  readonly label: readonly string[]
  readonly beside: readonly string[]
  readonly y: number
  readonly height: number
}

/** Where the axis stands on the drawing, px. */
interface Frame {
  readonly row: number
  readonly line: number
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
  const top = AXIS_PX * letters
  const rows = useMemo(() => placed(figure, frameOf(width, letters), letters), [figure, width, letters])
  const last = rows.at(-1)
  const height = (last === undefined ? top : last.y + last.height) + 6
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
          <Axis figure={figure} frame={frame} y={top - 4} bottom={height} />
          {rows.map((each) => (
            <Row key={each.row.id} placed={each} frame={frame} prefix={prefix} />
          ))}
          {figure.conflicts.map(({ number, rows: joined }) => (
            <Join
              key={number}
              number={number}
              middles={joined.flatMap((at) => {
                const row = rows[at]
                return row === undefined ? [] : [row.y + row.height / 2]
              })}
              frame={frame}
            />
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
  return {
    row: ROW_PX * letters,
    line: LINE_PX * letters,
    labelWidth,
    axisFrom,
    axisWidth,
    at: (place) => axisFrom + place * axisWidth,
  }
}

/** Rows from the top, each as high as its longer text needs. */
function placed(figure: TimeLineFigure, frame: Frame, letters: number): readonly PlacedRow[] {
  const words = textWidths('words', letters)
  const figures = textWidths('figures', letters)
  let y = AXIS_PX * letters
  return figure.rows.map((row) => {
    const label = fittedLines(row.label, frame.labelWidth - 10, words)
    const beside = fittedLines(row.beside, frame.axisFrom - frame.labelWidth - 10, figures)
    const height = frame.row + frame.line * (Math.max(label.length, beside.length) - 1)
    const own = { row, label, beside, y, height }
    y += height
    return own
  })
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

function Row(props: { readonly placed: PlacedRow; readonly frame: Frame; readonly prefix: string }) {
  const { placed: own, frame, prefix } = props
  const { row, label, beside, y, height } = own
  const middle = y + height / 2
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
  const lines = (texts: readonly string[], x: number) =>
    texts.map((text, at) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: a line is known by its place alone.
      <tspan key={at} x={x} y={middle + 4 + (at - (texts.length - 1) / 2) * frame.line}>
        {text}
      </tspan>
    ))
  return (
    <g>
      <text className={row.isBuilding ? 'is-strong' : ''}>{lines(label, 0)}</text>
      <text className="is-figures">{lines(beside, frame.labelWidth)}</text>
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

function Join(props: { readonly number: number; readonly middles: readonly number[]; readonly frame: Frame }) {
  const { number, middles, frame } = props
  const x = frame.at(1) + 14 + (number - 1) * 5
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
