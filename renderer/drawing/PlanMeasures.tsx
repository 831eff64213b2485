import { memo } from 'react'
import type { PlanMarks, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import { MM_PER_INCH } from '../../shared-types/units.ts'
import { figureText } from '../parts-of-page/figure-text.ts'
import { KeepsSize, Ticks } from './KeepsSize.tsx'
import { onScreen, type PlanScale, sheetOnScreen } from './plan-scale.ts'

interface PlanMeasuresProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
  readonly lengthMm: number
  readonly heightMm: number
  readonly inches: boolean
  readonly captions: PlanMarks['captions']
  readonly width: number
  readonly height: number
}

/** Ticks of a scale: whole steps within a length, in mm, with what is printed at the long ones. */
function ticks(lengthMm: number, inches: boolean): readonly { mm: number; text: string | null }[] {
  const step = inches ? 10 * MM_PER_INCH : 100
  const long = inches ? 2 : 5
  const whole = Math.floor(lengthMm / step + 1e-6)
  return Array.from({ length: whole + 1 }, (_, index) => ({
    mm: index * step,
    text: index % long === 0 ? figureText(inches ? index * 10 : index * 100) : null,
  }))
}

/** The whole of a length as it is written beside a scale. */
const wholeText = (mm: number, inches: boolean) => figureText(inches ? mm / MM_PER_INCH : mm, inches ? 1 : 0)

type RulerProps = PlanMeasuresProps & { readonly view: PlanView }

const rulerPlace = ({ view, scale }: RulerProps) => {
  const begin = onScreen(view, { u: 0, v: 0 }, scale)
  const y = Math.min(begin.y + 29, onScreen(view, { u: 0, v: view.box.v + view.box.height }, scale).y + 29)
  return { y, at: (mm: number) => begin.x + mm * scale.pixelsPerMm }
}

function RulerLine(props: RulerProps) {
  const { y, at } = rulerPlace(props)
  return <path className="measure-line" d={`M${at(0)} ${y} H${at(props.lengthMm)}`} />
}

function RulerFigures(props: RulerProps) {
  const { lengthMm, inches } = props
  const { y, at } = rulerPlace(props)
  const figures = [
    ...ticks(lengthMm - 260, inches).flatMap(({ mm, text }) => (text === null ? [] : [{ mm, text }])),
    { mm: lengthMm, text: `${wholeText(lengthMm, inches)} ${inches ? 'in' : 'mm'}` },
  ]
  return (
    <g className="ruler">
      <Ticks
        ticks={[...ticks(lengthMm, inches), { mm: lengthMm, text: null }].map(({ mm, text }) => ({
          ...{ x: at(mm), y, along: 0 },
          down: text === null && mm !== lengthMm ? -4 : -8,
        }))}
      />
      {figures.map(({ mm, text }) => (
        <KeepsSize key={mm} x={at(mm)} y={y}>
          <text y={-11} textAnchor="middle">
            {text}
          </text>
        </KeepsSize>
      ))}
    </g>
  )
}

type HeightsProps = PlanMeasuresProps & { readonly left: PlanView; readonly right: PlanView }

function heightsPlace({ left, right, scale }: HeightsProps) {
  const from = onScreen(left, { u: left.box.u + left.box.width, v: 0 }, scale)
  const to = onScreen(right, { u: right.box.u, v: 0 }, scale)
  const y = (mm: number) => from.y - mm * scale.pixelsPerMm
  return { x: from.x + (to.x - from.x) * 0.36, to, y }
}

function heightMarks(heightMm: number, inches: boolean) {
  const step = inches ? 20 * MM_PER_INCH : 500
  return [
    ...ticks(heightMm, inches).filter(({ mm }) => mm % step < 1e-6 && heightMm - mm > 120),
    { mm: heightMm, text: wholeText(heightMm, inches) },
  ]
}

function HeightLines(props: HeightsProps) {
  const { heightMm, inches } = props
  const { x, to, y } = heightsPlace(props)
  const reaches = heightMarks(heightMm, inches).map(({ mm }) => `M${x - 20} ${y(mm)} H${to.x + 10}`)
  return (
    <>
      <path className="measure-line" d={`M${x} ${y(0)} V${y(heightMm)}`} />
      <path className="measure-reach" d={reaches.join('')} />
    </>
  )
}

function HeightFigures(props: HeightsProps) {
  const { heightMm, inches } = props
  const { x, y } = heightsPlace(props)
  const marks = heightMarks(heightMm, inches)
  return (
    <g className="heights">
      <Ticks ticks={marks.map(({ mm }) => ({ x, y: y(mm), along: 8, down: 0 }))} />
      {marks.map(({ mm, text }) => (
        <KeepsSize key={mm} x={x} y={y(mm)}>
          <text x={8} y={-4}>
            {text}
          </text>
        </KeepsSize>
      ))}
    </g>
  )
}

/** Ruler along the car, heights between the views, the ground, and the name over each view. */
export const PlanMeasures = memo(function PlanMeasures(props: PlanMeasuresProps) {
  const { sheet, scale } = props
  const named = (id: PlanView['id']) => sheet.views.find((view) => view.id === id)
  const pairs = [
    [named('left'), named('front')],
    [named('right'), named('rear')],
  ].flatMap(([left, right]) => (left === undefined || right === undefined ? [] : [{ left, right }]))
  const left = named('left')
  const ruler = left === undefined ? null : { ...props, view: left }
  return (
    <svg className="plan-drawing plan-layer" width={props.width} height={props.height} aria-hidden="true">
      <g className="measures">
        <g className="moves">
          {pairs.map((pair) => {
            const ground = onScreen(pair.left, { u: pair.left.box.u, v: 0 }, scale)
            const edge = onScreen(pair.right, { u: pair.right.box.u + pair.right.box.width, v: 0 }, scale)
            return (
              <g key={pair.left.id}>
                <path className="measure-reach" d={`M${ground.x - 10} ${ground.y} H${edge.x + 10}`} />
                <HeightLines {...props} {...pair} />
              </g>
            )
          })}
          {ruler === null ? null : <RulerLine {...ruler} />}
        </g>
        {pairs.map((pair) => (
          <HeightFigures key={pair.left.id} {...props} {...pair} />
        ))}
        {ruler === null ? null : <RulerFigures {...ruler} />}
        {props.captions.map(({ view, text, at }) => (
          <KeepsSize key={view} {...sheetOnScreen(at, scale)}>
            <text className="view-caption">{text}</text>
          </KeepsSize>
        ))}
      </g>
    </svg>
  )
})
