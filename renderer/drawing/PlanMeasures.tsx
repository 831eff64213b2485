import { memo } from 'react'
import type { PlanMarks, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import { MM_PER_INCH } from '../../shared-types/units.ts'
import { figureText } from '../parts-of-page/figure-text.ts'
import { decoration } from './decoration.ts'
import { KeepsSize } from './KeepsSize.tsx'
import { onScreen, type PlanScale, sheetOnScreen } from './plan-scale.ts'

interface PlanMeasuresProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
  readonly lengthMm: number
  readonly heightMm: number
  readonly inches: boolean
  readonly captions: PlanMarks['captions']
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

function Ruler({ view, scale, lengthMm, inches }: PlanMeasuresProps & { readonly view: PlanView }) {
  const begin = onScreen(view, { u: 0, v: 0 }, scale)
  const y = Math.min(begin.y + 29, onScreen(view, { u: 0, v: view.box.v + view.box.height }, scale).y + 29)
  const at = (mm: number) => begin.x + mm * scale.pixelsPerMm
  return (
    <g className="ruler">
      <path className="measure-line" d={`M${at(0)} ${y} H${at(lengthMm)}`} />
      {ticks(lengthMm, inches).map(({ mm, text }) => (
        <KeepsSize key={mm} x={at(mm)} y={y}>
          <path className="measure-line" d={`M0 0v${text === null ? -4 : -8}`} />
        </KeepsSize>
      ))}
      {ticks(lengthMm - 260, inches)
        .filter(({ text }) => text !== null)
        .map(({ mm, text }) => (
          <KeepsSize key={mm} x={at(mm)} y={y}>
            <text y={-11} textAnchor="middle">
              {text}
            </text>
          </KeepsSize>
        ))}
      <KeepsSize x={at(lengthMm)} y={y}>
        <path className="measure-line" d="M0 0v-8" />
        <text y={-11} textAnchor="middle">
          {figureText(inches ? lengthMm / MM_PER_INCH : lengthMm, inches ? 1 : 0)} {inches ? 'in' : 'mm'}
        </text>
      </KeepsSize>
    </g>
  )
}

function Heights(props: PlanMeasuresProps & { readonly left: PlanView; readonly right: PlanView }) {
  const { left, right, scale, heightMm, inches } = props
  const from = onScreen(left, { u: left.box.u + left.box.width, v: 0 }, scale)
  const to = onScreen(right, { u: right.box.u, v: 0 }, scale)
  const x = from.x + (to.x - from.x) * 0.36
  const y = (mm: number) => from.y - mm * scale.pixelsPerMm
  const step = inches ? 20 * MM_PER_INCH : 500
  const marks = [
    ...ticks(heightMm, inches).filter(({ mm }) => mm % step < 1e-6 && heightMm - mm > 120),
    { mm: heightMm, text: figureText(inches ? heightMm / MM_PER_INCH : heightMm, inches ? 1 : 0) },
  ]
  return (
    <g className="heights">
      <path className="measure-line" d={`M${x} ${y(0)} V${y(heightMm)}`} />
      {marks.map(({ mm, text }) => (
        <g key={mm}>
          <path className="measure-reach" d={`M${x - 20} ${y(mm)} H${to.x + 10}`} />
          <KeepsSize x={x} y={y(mm)}>
            <path className="measure-line" d="M-4 0h8" />
            <text x={8} y={-4}>
              {text}
            </text>
          </KeepsSize>
        </g>
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
  ] as const
  const left = named('left')
  return (
    <g className="measures" {...decoration}>
      {pairs.map(([side, end]) => {
        if (side === undefined || end === undefined) return null
        const ground = onScreen(side, { u: side.box.u, v: 0 }, scale)
        const edge = onScreen(end, { u: end.box.u + end.box.width, v: 0 }, scale)
        return (
          <g key={side.id}>
            <path className="measure-reach" d={`M${ground.x - 10} ${ground.y} H${edge.x + 10}`} />
            <Heights {...props} left={side} right={end} />
          </g>
        )
      })}
      {left === undefined ? null : <Ruler {...props} view={left} />}
      {props.captions.map(({ view, text, at }) => (
        <KeepsSize key={view} {...sheetOnScreen(at, scale)}>
          <text className="view-caption">{text}</text>
        </KeepsSize>
      ))}
    </g>
  )
})
