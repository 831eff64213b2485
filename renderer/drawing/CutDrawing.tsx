import { useId } from 'react'
import type { CutFigure, FigurePlace } from '../../shared-types/coating-cut.ts'
import { figureText } from '../parts-of-page/figure-text.ts'
import { spotLabels } from './spot-labels.ts'
import { useOwnWidth } from './use-own-width.ts'
import { useLetterScale } from './use-sheet-width.ts'

const HEIGHT_PX = 190
const LEFT_PX = 46
const RIGHT_PX = 12
const TOP_PX = 18
const FOOT_PX = 24
const TICK_PX = 4
const RING_PX = 3
const ARROW_PX = 11

/** Where the axes stand, px. */
interface Frame {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly foot: number
  x(share: number): number
  y(share: number): number
}

/** Thickness along a line: the band, the middle, paint alone, readings near the line, and what was not assessed left blank. */
export function CutDrawing({ figure }: { readonly figure: CutFigure }) {
  const clip = useId().replace(/[^a-z0-9]/gi, '')
  const [element, width] = useOwnWidth<HTMLDivElement>()
  const letters = useLetterScale()
  const frame = frameOf(width, letters)
  const path = (places: readonly FigurePlace[]) =>
    places.map(({ x, y }, at) => `${at === 0 ? 'M' : 'L'}${px(frame.x(x))} ${px(frame.y(y))}`).join('')
  return (
    <div ref={element} className="cut-figure">
      {width === 0 ? null : (
        <svg
          className="plan-drawing cut-drawing"
          width={width}
          height={HEIGHT_PX * letters}
          role="img"
          aria-label={figure.textAlternative}
        >
          <clipPath id={clip}>
            <rect x={frame.left} y={frame.top} width={frame.right - frame.left} height={frame.foot - frame.top} />
          </clipPath>
          <g clipPath={`url(#${clip})`}>
            {figure.stretches.map(({ band }) => (
              <path key={path(band)} className="panel-hatch cut-band" d={`${path(band)}Z`} />
            ))}
            {[figure.paint.low, figure.paint.high].map((at) => (
              <path key={at} className="cut-paint-edge" d={`M${frame.left} ${px(frame.y(at))}H${px(frame.right)}`} />
            ))}
            <path className="cut-paint" d={`M${frame.left} ${px(frame.y(figure.paint.middle))}H${px(frame.right)}`} />
            <path className="cut-threshold" d={`M${frame.left} ${px(frame.y(figure.threshold))}H${px(frame.right)}`} />
            {figure.blanks.map(({ from, to }) => (
              <rect
                key={from}
                className="cut-blank"
                x={frame.x(from)}
                y={frame.top}
                width={frame.x(to) - frame.x(from)}
                height={frame.foot - frame.top}
              />
            ))}
            {figure.stretches.map(({ middle }) => (
              <path key={path(middle)} className="cut-middle" d={path(middle)} />
            ))}
          </g>
          <Axes figure={figure} frame={frame} letters={letters} />
          <Readings figure={figure} frame={frame} width={width} letters={letters} />
        </svg>
      )}
    </div>
  )
}

const px = (value: number): string => value.toFixed(1)

function frameOf(width: number, letters: number): Frame {
  const [left, right] = [LEFT_PX * letters, width - RIGHT_PX]
  const [top, foot] = [TOP_PX * letters, (HEIGHT_PX - FOOT_PX) * letters]
  return {
    left,
    right,
    top,
    foot,
    x: (share) => left + share * (right - left),
    y: (share) => foot - share * (foot - top),
  }
}

interface PartProps {
  readonly figure: CutFigure
  readonly frame: Frame
  readonly letters: number
}

function Axes({ figure, frame, letters }: PartProps) {
  const { left, right, top, foot } = frame
  const last = figure.along.at(-1)
  return (
    <g className="cut-axes">
      <path className="cut-axis" d={`M${left} ${top}V${foot}H${right}`} />
      {figure.along.map((mark) => (
        <g key={mark.at}>
          <path className="cut-axis" d={`M${px(frame.x(mark.at))} ${foot}v${TICK_PX}`} />
          <text x={frame.x(mark.at)} y={foot + 15 * letters} textAnchor={mark.at > 0.97 ? 'end' : 'middle'}>
            {figureText(mark.value, mark.decimals)}
            {mark === last ? `\u202f${figure.lengthUnit}` : ''}
          </text>
        </g>
      ))}
      {figure.up.map((mark) => (
        <g key={mark.at}>
          <path className="cut-axis" d={`M${left} ${px(frame.y(mark.at))}h${-TICK_PX}`} />
          <text x={left - TICK_PX - 3} y={frame.y(mark.at) + 4 * letters} textAnchor="end">
            {figureText(mark.value, mark.decimals)}
          </text>
        </g>
      ))}
      <text x={left - TICK_PX - 3} y={top - 6 * letters} textAnchor="end">
        {figure.thicknessUnit}
      </text>
    </g>
  )
}

/** Readings as rings; one that went beyond the gauge has an arrow up, because it stands for more. */
function Readings({ figure, frame, letters, width }: PartProps & { readonly width: number }) {
  const spots = figure.readings.map(({ x, y, spot }) => ({ letter: `R${spot}`, at: { u: x, v: y }, figure: '' }))
  const labels = spotLabels(spots, ({ u, v }) => ({ x: frame.x(u), y: frame.y(v) }), width, letters)
  return figure.readings.map(({ spot, orMore }, index) => {
    const label = labels[index]
    if (label === undefined) return null
    const { x, y, text, textX, textY } = label
    return (
      <g key={spot} className="cut-reading">
        {orMore ? <path className="cut-more" d={`M${px(x)} ${px(y - RING_PX)}v${-ARROW_PX}m-3 4l3 -4l3 4`} /> : null}
        <circle cx={x} cy={y} r={RING_PX} />
        <text x={textX} y={textY}>
          {text}
        </text>
      </g>
    )
  })
}

/** What the marks of a cut stand for. */
export function CutKey() {
  const entries: readonly (readonly [string, React.ReactElement])[] = [
    ['middle', <path key="middle" className="cut-middle" d="M1 6.5H21" />],
    ['nine draws of ten', <rect key="band" className="cut-band" x={1} y={2} width={20} height={9} />],
    ['paint alone', <path key="paint" className="cut-paint" d="M1 6.5H21" />],
    ['filler from here', <path key="threshold" className="cut-threshold" d="M1 6.5H21" />],
    [
      'more than the gauge reads',
      <g key="more" className="cut-reading">
        <path className="cut-more" d="M11 8V1m-3 3l3 -3l3 3" />
        <circle cx={11} cy={9} r={3} />
      </g>,
    ],
    ['not assessed', <rect key="blank" className="cut-blank" x={1} y={2} width={20} height={9} />],
  ]
  return (
    <ul className="map-legend">
      {entries.map(([words, mark]) => (
        <li key={words}>
          <svg className="plan-drawing cut-drawing" width="22" height="13" aria-hidden="true">
            {mark}
          </svg>
          {words}
        </li>
      ))}
    </ul>
  )
}
