import type { PlanFigure } from '../../../shared-types/figure.ts'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import { turnTable, turnTo, useWalkStore, zoomBy } from './walk-store.ts'

/** The sheets of the plan, and the same facts as a table. */
export function PlanSheets({ figure }: { readonly figure: PlanFigure }) {
  const planSheet = useWalkStore((state) => state.planSheet)
  const isZoomed = useWalkStore((state) => state.look.zoom > 1)
  const tableShown = useWalkStore((state) => state.tableShown)
  return (
    <nav className="plan-sheets" aria-label="Sheets of the plan">
      {tableShown
        ? null
        : figure.sheets.map(({ id, name }, index) => (
            <button
              key={id}
              type="button"
              className="plan-sheet-name"
              aria-pressed={id === planSheet}
              onClick={() => turnTo(id)}
            >
              <KeyCap keys={String(index + 1)} />
              <span>{name}</span>
            </button>
          ))}
      {isZoomed && !tableShown ? (
        <button type="button" className="plan-sheet-name" onClick={() => zoomBy(0)}>
          <KeyCap keys="0" />
          <span>whole sheet</span>
        </button>
      ) : null}
      <button type="button" className="plan-sheet-name is-last" onClick={turnTable}>
        <KeyCap keys="V" />
        <span>{tableShown ? 'as a plan' : 'as a table'}</span>
      </button>
    </nav>
  )
}
