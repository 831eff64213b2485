import { memo, useMemo } from 'react'
import type { PlanSheet, PlanView } from '../../shared-types/figure.ts'
import { TOUCH_TARGET_PX } from '../../shared-types/tokens.ts'
import { decoration } from './decoration.ts'
import { boxOf, outlinePoints, type ViewBox } from './outline-shape.ts'
import { onScreen, type PlanScale, sheetOnScreen, viewTransform } from './plan-scale.ts'

interface Target {
  readonly panelId: string
  readonly view: PlanView
  readonly outline: string
  readonly box: ViewBox
}

const narrow = ({ box }: Target): number => Math.min(box.width, box.height)

/** Every outline of a panel this car has, large ones first, so that small ones lie on top. */
function targetsOf(sheet: PlanSheet, panelIds: readonly string[]): readonly Target[] {
  const own = new Set(panelIds)
  return sheet.views
    .flatMap((view) =>
      view.panels
        .filter(({ panelId }) => own.has(panelId))
        .map(({ panelId, outline }) => {
          return { panelId, view, outline, box: boxOf(outlinePoints(outline)) }
        }),
    )
    .sort((a, b) => narrow(b) - narrow(a))
}

/** Where each panel of the sheet shows first, in the order given. */
function leadingTargets(sheet: PlanSheet, targets: readonly Target[], order: readonly string[]): readonly Target[] {
  const place = new Map(order.map((panelId, index) => [panelId, index]))
  const viewPlace = new Map(sheet.views.map((view, index) => [view, index]))
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
  readonly scale: PlanScale
  readonly name: string
  readonly inHand: boolean
}

/** A shape in an SVG cannot be a button element. */
const asButton = { role: 'button' } as const

const NamedTarget = memo(function NamedTarget({ target, scale, name, inHand }: NamedTargetProps) {
  const { box, view } = target
  const { x, y } = onScreen(view, box, scale)
  return (
    <rect
      className="plan-named"
      x={x}
      y={y}
      width={box.width * scale.pixelsPerMm}
      height={box.height * scale.pixelsPerMm}
      data-panel={target.panelId}
      {...asButton}
      aria-label={name}
      aria-current={inHand ? 'true' : undefined}
      tabIndex={inHand ? 0 : -1}
    />
  )
})

interface NamedTargetsProps {
  readonly targets: readonly Target[]
  readonly scale: PlanScale
  readonly nameOf: (panelId: string) => string
  readonly inHand: string | null
  /** What the names say; they are asked for anew when it changes. */
  readonly table: readonly unknown[]
}

/** A stretch of the walk: a step renders the stretch it leaves and the one it comes to, and no other. */
const NamedTargets = memo(function NamedTargets({ targets, scale, nameOf, inHand }: NamedTargetsProps) {
  return targets.map((target) => (
    <NamedTarget
      key={target.panelId}
      target={target}
      scale={scale}
      name={nameOf(target.panelId)}
      inHand={target.panelId === inHand}
    />
  ))
})

interface PointerTargetsProps {
  readonly targets: readonly Target[]
  readonly scale: PlanScale
}

/** The panels as a pointer meets them: every outline in every view, with a halo where it is smaller than a finger. */
const PointerTargets = memo(function PointerTargets({ targets, scale }: PointerTargetsProps) {
  const views = [...new Set(targets.map(({ view }) => view))]
  return (
    <g className="plan-targets" {...decoration}>
      {views.map((own) => (
        <g key={own.id} transform={viewTransform(own, scale)}>
          {targets
            .filter(({ view }) => view === own)
            .map((target) => {
              const narrowPx = (narrow(target) * scale.pixelsPerMm).toFixed(1)
              return (
                <path
                  key={target.panelId}
                  className="plan-target"
                  d={target.outline}
                  data-panel={target.panelId}
                  data-narrow={narrowPx}
                  style={{ '--narrow': `${narrowPx}px` } as React.CSSProperties}
                />
              )
            })}
        </g>
      ))}
    </g>
  )
})

interface GroundProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
}

/**
 * The sheet under all targets. A browser gathers the area of everything a finger is heard on; where one shape holds all
 * the others it need not join their outlines, one by one, at each movement.
 */
const Ground = memo(function Ground({ sheet, scale }: GroundProps) {
  const [from, to] = [
    sheetOnScreen({ x: 0, y: 0 }, scale),
    sheetOnScreen({ x: sheet.widthMm, y: sheet.heightMm }, scale),
  ]
  return (
    <rect
      className="plan-ground"
      x={from.x - TOUCH_TARGET_PX}
      y={from.y - TOUCH_TARGET_PX}
      width={to.x - from.x + 2 * TOUCH_TARGET_PX}
      height={to.y - from.y + 2 * TOUCH_TARGET_PX}
    />
  )
})

const STRETCH = 12

interface PlanTargetsProps {
  readonly sheet: PlanSheet
  readonly scale: PlanScale
  readonly nameOf: (panelId: string) => string
  readonly inHand: string | null
  readonly table: readonly { readonly panelId: string }[]
  readonly width: number
  readonly height: number
}

const inStretches = (targets: readonly Target[]): readonly (readonly Target[])[] =>
  Array.from({ length: Math.ceil(targets.length / STRETCH) }, (_, at) =>
    targets.slice(at * STRETCH, (at + 1) * STRETCH),
  )

/**
 * The panels to choose from. Keyboard and screen reader meet each once, named with its state, in walking order; a
 * pointer meets all their outlines.
 */
export const PlanTargets = memo(function PlanTargets(props: PlanTargetsProps) {
  const { sheet, scale, nameOf, inHand, table } = props
  // As text, so that only another order of the walk sets the targets anew, and not every state that is entered.
  const order = useMemo(() => table.map(({ panelId }) => panelId).join(' '), [table])
  const targets = useMemo(() => targetsOf(sheet, order.split(' ')), [sheet, order])
  const stretches = useMemo(
    () => inStretches(leadingTargets(sheet, targets, order.split(' '))),
    [sheet, targets, order],
  )
  return (
    <svg role="presentation" className="plan-drawing plan-layer plan-reached" width={props.width} height={props.height}>
      <g className="moves">
        <Ground sheet={sheet} scale={scale} />
        <g className="plan-named-targets">
          {stretches.map((stretch) => (
            <NamedTargets
              key={stretch[0]?.panelId}
              targets={stretch}
              scale={scale}
              nameOf={nameOf}
              inHand={stretch.some(({ panelId }) => panelId === inHand) ? inHand : null}
              table={table}
            />
          ))}
        </g>
        <PointerTargets targets={targets} scale={scale} />
      </g>
    </svg>
  )
})
