import { type KeyboardEvent, type PointerEvent, useState } from 'react'
import type { Extent, PlanPoint } from '../../../shared-types/finding.ts'
import { MM_PER_INCH } from '../../../shared-types/units.ts'
import { lineLengthMm, polygonAreaMm2 } from '../../drawing/outline-shape.ts'
import { largestPanelView, PanelDrawing } from '../../drawing/PanelDrawing.tsx'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { areaText, lengthText } from '../../parts-of-page/figure-text.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useWalkStore } from './walk-store.ts'

interface ExtentPadProps {
  readonly panelId: string
  readonly extent: Extent | null
  readonly onChange: (extent: Extent | null) => void
  readonly problem: string | null
}

/** How far an arrow moves the cross, alone and with Shift: a round length in the unit of the record. */
const steps = {
  mm: { alone: 10, shift: 100, words: '10 mm', shiftWords: '100' },
  in: { alone: MM_PER_INCH / 2, shift: MM_PER_INCH * 5, words: '1/2 in', shiftWords: '5' },
} as const
const round = (mm: number): number => Math.round(mm * 10) / 10

function shapeOf(points: readonly PlanPoint[], closed: boolean): Extent['shape'] {
  if (points.length < 2) return 'point'
  return closed && points.length > 2 ? 'area' : 'line'
}

const moves: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
}

/** The panel in hand, to draw a finding's extent on: arrows move a cross, Space sets a point, Enter closes. */
export function ExtentPad({ panelId, extent, onChange, problem }: ExtentPadProps) {
  const figure = useWalkStore((state) => state.figure)
  const lengthUnit = useRecordStore((state) => state.record?.commission.lengthUnit ?? 'mm')
  const { alone, shift, words, shiftWords } = steps[lengthUnit]
  const shown = figure === null ? undefined : largestPanelView(figure, panelId)
  const [cursor, setCursor] = useState<PlanPoint | null>(null)
  if (shown === undefined)
    return <p className="note">This panel has no outline on the plan: the whole panel is meant.</p>
  const points = extent?.points ?? []
  const at = cursor ?? shown.panel.label
  const put = (next: readonly PlanPoint[], closed: boolean) =>
    onChange(next.length === 0 ? null : { view: shown.view.id, shape: shapeOf(next, closed), points: [...next] })
  const add = (point: PlanPoint) => put([...points, { u: round(point.u), v: round(point.v) }], true)
  const press = (event: KeyboardEvent) => {
    const move = moves[event.key]
    if (move !== undefined && !event.ctrlKey && !event.altKey) {
      const step = event.shiftKey ? shift : alone
      setCursor({ u: at.u + move[0] * step, v: at.v + move[1] * step })
    } else if (event.key === ' ') add(at)
    else if (event.key === 'Backspace') put(points.slice(0, -1), extent?.shape === 'area')
    else if (event.key === 'Delete') onChange(null)
    else if (event.key.toLowerCase() === 'o') put(points, extent?.shape !== 'area')
    else if (event.key === 'Enter') {
      put(points, true)
      document.querySelector<HTMLElement>('#finding-note textarea')?.focus()
    } else return
    event.preventDefault()
    event.stopPropagation()
  }
  const size =
    extent === null
      ? 'whole panel'
      : extent.shape === 'area'
        ? `area, ${areaText(polygonAreaMm2(points), lengthUnit)} as drawn`
        : extent.shape === 'line'
          ? `line, ${lengthText(lineLengthMm(points), lengthUnit)} as drawn`
          : 'point'
  return (
    <div className="extent-pad">
      <span className="field-label">
        <span>
          Extent: <strong className="extent-size">{size}</strong>
        </span>
        <ActionKey keys="" label="whole panel" name="Extent: the whole panel" onAct={() => onChange(null)} />
      </span>
      <PanelDrawing
        view={shown.view}
        panel={shown.panel}
        extents={extent === null ? [] : [{ finding: 0, shape: extent.shape, points, hatch: null }]}
        spots={[]}
        cursor={at}
        label={`Outline for the extent: ${size}. Arrows move the cross by ${words}, Space sets a point, Enter closes.`}
        onKeyDown={press}
        onPoint={(point: PlanPoint, _event: PointerEvent) => {
          setCursor(point)
          add(point)
        }}
      />
      <p className="field-hint">
        {`X, then arrows ${words} (Shift ${shiftWords}), Space sets a point, Backspace takes it back, O opens or closes, Enter is done`}
      </p>
      {problem === null ? null : <p className="field-problem">{problem}</p>}
    </div>
  )
}
