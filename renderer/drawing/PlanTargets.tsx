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
}

/** Every outline of a sheet that can be chosen, large ones first, so that small ones lie on top. */
export function targetsOf(sheet: PlanSheet): readonly Target[] {
  return sheet.views
    .flatMap((view) =>
      view.panels.map(({ panelId, outline }) => {
        const box = boxOf(outlinePoints(outline))
        return { panelId, view: view.id, outline, narrowMm: Math.min(box.width, box.height) }
      }),
    )
    .sort((a, b) => b.narrowMm - a.narrowMm)
}

/** Where each panel of the sheet shows first, in the order given; panels the order leaves out come last. */
export function leadingTargets(sheet: PlanSheet, order: readonly string[]): readonly Target[] {
  const place = new Map(order.map((panelId, index) => [panelId, index]))
  const leading = new Map<string, Target>()
  for (const view of sheet.views) {
    for (const { panelId, outline } of view.panels) {
      if (!leading.has(panelId)) leading.set(panelId, { panelId, view: view.id, outline, narrowMm: 0 })
    }
  }
  const placeOf = ({ panelId }: Target) => place.get(panelId) ?? order.length
  return [...leading.values()].sort((a, b) => placeOf(a) - placeOf(b))
}

interface NamedTargetProps {
  readonly target: Target
  readonly transform: string
  readonly name: string
  readonly inHand: boolean
}

/** An outline cannot be a button element: a path stands in an SVG. */
const asButton = { role: 'button' } as const

const NamedTarget = memo(function NamedTarget({ target, transform, name, inHand }: NamedTargetProps) {
  return (
    <path
      className="plan-named"
      transform={transform}
      d={target.outline}
      data-panel={target.panelId}
      {...asButton}
      aria-label={name}
      aria-current={inHand ? 'true' : undefined}
      tabIndex={inHand ? 0 : -1}
    />
  )
})

interface NamedTargetsProps {
  readonly sheet: PlanSheet
  readonly targets: readonly Target[]
  readonly scale: PlanScale
  readonly nameOf: (panelId: string) => string
  readonly inHand: string | null
}

const transformsOf = (sheet: PlanSheet, scale: PlanScale) =>
  new Map(sheet.views.map((view) => [view.id as string, viewTransform(view, scale)]))

/** The panels as keyboard and screen reader meet them: one each, named with its state, in walking order. */
export function NamedTargets({ sheet, targets, scale, nameOf, inHand }: NamedTargetsProps) {
  const transforms = transformsOf(sheet, scale)
  return (
    <g className="plan-named-targets">
      {targets.map((target) => (
        <NamedTarget
          key={target.panelId}
          target={target}
          transform={transforms.get(target.view) ?? ''}
          name={nameOf(target.panelId)}
          inHand={target.panelId === inHand}
        />
      ))}
    </g>
  )
}

interface PointerTargetsProps {
  readonly sheet: PlanSheet
  readonly targets: readonly Target[]
  readonly scale: PlanScale
}

/** The panels as a pointer meets them: every outline in every view, with a halo where it is smaller than a finger. */
export const PointerTargets = memo(function PointerTargets({ sheet, targets, scale }: PointerTargetsProps) {
  const transforms = transformsOf(sheet, scale)
  return (
    <g className="plan-targets" {...decoration}>
      {targets.map((target) => (
        <path
          key={`${target.view}${target.panelId}`}
          className="plan-target"
          transform={transforms.get(target.view)}
          d={target.outline}
          data-panel={target.panelId}
          style={{ '--narrow': `${(target.narrowMm * scale.pixelsPerMm).toFixed(1)}px` } as React.CSSProperties}
        />
      ))}
    </g>
  )
})
