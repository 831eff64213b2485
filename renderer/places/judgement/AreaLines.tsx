import { useId, useState } from 'react'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { AreaJudgement, StateShare } from '../../../shared-types/judgement.ts'
import { statesBesideBars } from '../../../shared-types/states-beside-bars.ts'
import { useShownUnits } from '../../store/shown-units.ts'
import { boundsText } from './bounds-text.ts'
import { ShareLine } from './ShareLine.tsx'

function StateTable({ head, shares }: { readonly head: string; readonly shares: readonly StateShare[] }) {
  const { surface } = coatingMeasures(useShownUnits())
  return (
    <table className="state-shares">
      <caption>{head}</caption>
      <thead>
        <tr>
          <th scope="col">state</th>
          <th scope="col">share</th>
          <th scope="col">{`area, ${surface.unit}`}</th>
        </tr>
      </thead>
      <tbody>
        {shares.map((share) => (
          <tr key={share.state}>
            <th scope="row">{share.state}</th>
            <td className="figures">{boundsText(share)}</td>
            <td className="figures">{surface.figure(share.areaM2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

interface AreaLinesProps {
  readonly area: AreaJudgement
  /** The bars count with weights the user set. */
  readonly weighed: boolean
  /** The whole body shows its states without being asked. */
  readonly whole?: boolean
}

/** A surface: its metal and its paint as bounds on the common axis, and every state it was found in. */
export function AreaLines({ area, weighed, whole = false }: AreaLinesProps) {
  const { surface } = coatingMeasures(useShownUnits())
  const [open, setOpen] = useState(whole)
  const states = useId()
  const beside = statesBesideBars(area, weighed)
  const seen = `${area.panelsSeen} of ${area.panels} ${area.panels === 1 ? 'panel' : 'panels'} seen`
  return (
    <div className="area-lines">
      <div className="area-head">
        <span className="strong">{area.label}</span>
        <span className="quiet">{`${surface.text(area.areaM2)} by the plan · ${seen}`}</span>
        <button
          type="button"
          className="action-key"
          aria-expanded={open}
          aria-controls={open ? states : undefined}
          onClick={() => setOpen(!open)}
        >
          {open ? 'close states' : 'states'}
          <span className="unseen"> of {area.label}</span>
        </button>
      </div>
      <ShareLine range={area.originalMetal} label="original metal" />
      <ShareLine range={area.factoryPaint} label="factory paint" />
      {open ? (
        <div id={states} className="state-tables">
          <StateTable head="Metal" shares={area.metal} />
          <StateTable head="Paint" shares={area.paint} />
          {beside === '' ? null : <p className="note">{beside}</p>}
        </div>
      ) : null}
    </div>
  )
}
