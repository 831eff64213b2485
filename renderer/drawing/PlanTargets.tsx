import { memo } from 'react'
import type { PlanSheet } from '../../shared-types/figure.ts'
import { decoration } from './decoration.ts'
import { boxOf, outlinePoints, type ViewBox } from './outline-shape.ts'
import { type PlanScale, viewTransform } from './plan-scale.ts'

interface Target {
  readonly panelId: string
  readonly view: string
  readonly outline: string
  readonly box: ViewBox
}

const narrow = ({ box }: Target): number => Math.min(box.width, box.height)

/** Every outline of a panel this car has, large ones first, so that small ones lie on top. */
export function targetsOf(sheet: PlanSheet, panelIds: readonly string[]): readonly Target[] {
  const own = new Set(panelIds)
  return sheet.views
    .flatMap((view) =>
      view.panels
        .filter(({ panelId }) => own.has(panelId))
        .map(({ panelId, outline }) => {
          return { panelId, view: view.id, outline, box: boxOf(outlinePoints(outline)) }
        }),
    )
    .sort((a, b) => narrow(b) - narrow(a))
}

/** Where each panel of the sheet shows first, in the order given. */
export function leadingTargets(
  sheet: PlanSheet,
  targets: readonly Target[],
  order: readonly string[],
): readonly Target[] {
  const place = new Map(order.map((panelId, index) => [panelId, index]))
  const viewPlace = new Map<string, number>(sheet.views.map((view, index) => [view.id, index]))
  const leading = new Map<string, Target>()
  for (const target of targets) {
    const known = leading.get(target.panelId)
    if (known === undefined || (viewPlace.get(target.view) ?? 0) < (viewPlace.get(known.view) ?? 0)) {
      leading.set(target.panelId, target)
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

/** A shape in an SVG cannot be a button element. */
const asButton = { role: 'button' } as const

const NamedTarget = memo(function NamedTarget({ target, transform, name, inHand }: NamedTargetProps) {
  const { box } = target
  return (
    <rect
      className="plan-named"
      transform={transform}
      x={box.u}
      y={box.v}
      width={box.width}
      height={box.height}
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
  /** What the names say; they are asked for anew when it changes. */
  readonly table: readonly unknown[]
}

const transformsOf = (sheet: PlanSheet, scale: PlanScale) =>
  new Map(sheet.views.map((view) => [view.id as string, viewTransform(view, scale)]))

/** The panels as keyboard and screen reader meet them: one each, named with its state, in walking order. */
export const NamedTargets = memo(function NamedTargets(props: NamedTargetsProps) {
  const { sheet, targets, scale, nameOf, inHand } = props
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
})

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
          style={{ '--narrow': `${(narrow(target) * scale.pixelsPerMm).toFixed(1)}px` } as React.CSSProperties}
        />
      ))}
    </g>
  )
})
