import { memo } from 'react'
import type { PlanMarks } from '../../shared-types/figure.ts'
import { HatchPatterns, hatchFill } from './HatchPatterns.tsx'

/** What the marks mean; a word beside every mark, and only the marks that are in use. */
export const PlanLegend = memo(function PlanLegend({ legend }: { readonly legend: PlanMarks['legend'] }) {
  return (
    <ul className="plan-legend" aria-label="What the marks mean">
      {legend.map((line) => (
        <li key={line.word}>
          <svg width="28" height="12" aria-hidden="true">
            <HatchPatterns prefix={`legend-${line.hatch}`} pixelsPerUnit={1} only={line.hatch} />
            <rect
              x="1"
              y="1"
              width="26"
              height="10"
              className={line.edge === 'dotted' ? 'edge-unseen' : 'edge-seen'}
              fill={hatchFill(`legend-${line.hatch}`, line.hatch) ?? 'none'}
            />
            {line.crossed ? <path className="edge-crossed" d="M1 1 L27 11 M1 11 L27 1" /> : null}
          </svg>
          <span>{line.word}</span>
        </li>
      ))}
    </ul>
  )
})
