import { memo } from 'react'
import type { LookNext } from '../../../shared-types/judgement.ts'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import { type NameChoice, walkLayerWords } from '../../../shared-types/words.ts'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import type { LayerCoverage } from './walking.ts'

const TICK_PITCH_PX = 2.5

/** One tick for each panel, from one place of the bar to another. */
function ticksFrom(first: number, end: number): string {
  return Array.from(
    { length: end - first },
    (_, index) => `M${((first + index) * TICK_PITCH_PX + 0.5).toFixed(1)} 0.5 h1.5 v7 h-1.5 Z`,
  ).join(' ')
}

function CoverageBar({ layer, seen, all }: LayerCoverage) {
  return (
    <span className="coverage-bar">
      <span>
        {walkLayerWords[layer]} {seen} of {all}
      </span>
      <svg width={all * TICK_PITCH_PX + 1} height="8" aria-hidden="true">
        <path className="coverage-tick is-seen" d={ticksFrom(0, seen)} />
        <path className="coverage-tick" d={ticksFrom(seen, all)} />
      </svg>
    </span>
  )
}

interface CoverageStripProps {
  readonly coverage: readonly LayerCoverage[]
  /** Null while it is still being reckoned. */
  readonly lookNext: readonly LookNext[] | null
  readonly panels: readonly PanelDefinition[]
  readonly names: NameChoice
  readonly onGo: (panelId: string) => void
}

const SHOWN = 3

/** How many panels have been looked at, by layer, and what would settle most. */
export const CoverageStrip = memo(function CoverageStrip(props: CoverageStripProps) {
  const { coverage, panels, names } = props
  const seen = coverage.reduce((sum, layer) => sum + layer.seen, 0)
  const all = coverage.reduce((sum, layer) => sum + layer.all, 0)
  const unreached = coverage.reduce((sum, layer) => sum + layer.notAccessible, 0)
  return (
    <section className="coverage-strip" aria-label="Coverage">
      <div className="coverage-line">
        <p>
          <strong>
            {seen} of {all} panels looked at
          </strong>
          <span className="coverage-counts">
            {coverage
              .map(({ layer, seen: own, all: ownAll }) => ` · ${walkLayerWords[layer]} ${own} of ${ownAll}`)
              .join('')}
          </span>
          {unreached === 0 ? '' : ` · ${unreached} not accessible`}
        </p>
        <span className="coverage-bars">
          {coverage.map((layer) => (
            <CoverageBar key={layer.layer} {...layer} />
          ))}
        </span>
      </div>
      <div className="look-next">
        <p className="look-next-head">
          <strong>Look next</strong>
          <br />
          what would settle most
        </p>
        {props.lookNext === null ? <p className="note">being reckoned</p> : null}
        {props.lookNext?.length === 0 ? <p className="note">Nothing is open that this walk could settle.</p> : null}
        {(props.lookNext ?? []).slice(0, SHOWN).map((next, index) => {
          const panel = panels.find((own) => own.id === next.panelId)
          const name = panel === undefined ? '' : panelName(panel, names)
          return (
            <button
              type="button"
              key={`${next.panelId}${next.what}`}
              className="look-next-item"
              disabled={panel === undefined}
              onClick={() => panel !== undefined && props.onGo(panel.id)}
            >
              <KeyCap keys={`L ${index + 1}`} />
              <span className="look-next-words">
                {name === '' ? null : <strong>{name}</strong>}
                {next.what === name ? null : <span>{next.what}</span>}
                <span className="quiet">{next.why}</span>
              </span>
            </button>
          )
        })}
      </div>
    </section>
  )
})
