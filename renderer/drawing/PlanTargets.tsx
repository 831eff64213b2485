import { memo } from 'react'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { decoration } from './decoration.ts'
import { boxOf, outlinePoints } from './outline-shape.ts'
import { type PlanScale, viewTransform } from './plan-scale.ts'

interface Target {
  readonly panelId: string
  readonly view: string
  readonly outline: string
  /** Smaller side of its box, mm. */
  readonly narrowMm: number
  /** The first view a panel shows in carries its name and takes the focus; the others are for the pointer alone. */
  readonly leads: boolean
}

/** Every outline of a sheet that can be chosen, large ones first, so that small ones lie on top. */
export function targetsOf(sheet: PlanSheet): readonly Target[] {
  const led = new Set<string>()
  const targets: Target[] = []
  for (const view of sheet.views) {
    for (const panel of view.panels) {
      const box = boxOf(outlinePoints(panel.outline))
      targets.push({
        panelId: panel.panelId,
        view: view.id,
        outline: panel.outline,
        narrowMm: Math.min(box.width, box.height),
        leads: !led.has(panel.panelId),
      })
      led.add(panel.panelId)
    }
  }
  return targets.sort((a, b) => b.narrowMm - a.narrowMm)
}

const FINGER_PX = 44

interface PlanTargetsProps {
  readonly sheet: PlanSheet
  readonly targets: readonly Target[]
  readonly scale: PlanScale
  readonly nameOf: (panelId: string) => string
  readonly inHand: string | null
}

interface PanelTargetProps {
  readonly target: Target
  readonly transform: string
  readonly halo: number
  readonly name: string
  readonly inHand: boolean
}

/** An outline cannot be a button element: a path stands in an SVG. */
const asButton = { role: 'button' } as const

const PanelTarget = memo(function PanelTarget({ target, transform, halo, name, inHand }: PanelTargetProps) {
  const pointer = {
    className: 'plan-target',
    d: target.outline,
    'data-panel': target.panelId,
    style: { '--halo': `${halo}px` } as React.CSSProperties,
  }
  if (!target.leads) {
    return (
      <g transform={transform} {...decoration}>
        <path {...pointer} />
      </g>
    )
  }
  return (
    <g transform={transform}>
      <path
        {...pointer}
        {...asButton}
        aria-label={name}
        aria-current={inHand ? 'true' : undefined}
        tabIndex={inHand ? 0 : -1}
      />
    </g>
  )
})

/** The outlines as targets: named, in walking order for the keyboard, with a halo where they are small. */
export function PlanTargets({ sheet, targets, scale, nameOf, inHand }: PlanTargetsProps) {
  const transforms = new Map(sheet.views.map((view) => [view.id as string, viewTransform(view, scale)]))
  return (
    <g className="plan-targets">
      {targets.map((target) => (
        <PanelTarget
          key={`${target.view}${target.panelId}`}
          target={target}
          transform={transforms.get(target.view) ?? ''}
          halo={Math.max(0, Math.round(FINGER_PX - target.narrowMm * scale.pixelsPerMm))}
          name={nameOf(target.panelId)}
          inHand={target.panelId === inHand}
        />
      ))}
    </g>
  )
}
