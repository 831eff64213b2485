import { readFileSync } from 'node:fs'
import { z } from 'zod'
import { planPoint, viewId } from '../../shared-types/finding.ts'
import { panelId } from '../../shared-types/panel.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { type BodyStyle, bodyStyle } from '../../shared-types/words.ts'
import { resourcePath } from '../places-on-disk.ts'

const pathData = z.string().regex(/^M[-\d. MLCZ]+$/)
const closedPath = pathData.regex(/^M[^M]+Z$/)
const millimetres = z.number().min(-20_000).max(20_000)

const view = z.strictObject({
  id: viewId,
  name: z.string().min(1),
  box: z.strictObject({
    u: millimetres,
    v: millimetres,
    width: z.number().positive(),
    height: z.number().positive(),
  }),
  at: z.strictObject({ x: millimetres, y: millimetres }),
  panels: z
    .array(z.strictObject({ panelId, outline: closedPath, label: planPoint, areaMm2: z.number().positive() }))
    .min(1),
  ink: z.array(
    z.strictObject({
      weight: z.enum(['silhouette', 'shut', 'detail', 'form', 'centre', 'station']),
      path: pathData,
      occlude: z.boolean(),
    }),
  ),
  silhouette: closedPath.or(z.literal('')),
  /** Holes of the silhouette: glass seen past the edge of the body. */
  open: z.array(closedPath),
  /** Panels that lie in the opening of another one. */
  set: z.array(z.strictObject({ panelId, within: panelId })),
})

/** A body plan as kept in `resources/body-plans`: what the generator of the build wrote. */
export const bodyPlanFile = z.strictObject({
  body: bodyStyle,
  title: z.string().min(1),
  dimensions: z.strictObject({
    lengthMm: z.number().positive(),
    wheelbaseMm: z.number().positive(),
    widthMm: z.number().positive(),
    heightMm: z.number().positive(),
  }),
  sheets: z
    .array(
      z.strictObject({
        id: z.enum(['outside', 'openings', 'bay', 'floor', 'under']),
        name: z.string().min(1),
        widthMm: z.number().positive(),
        heightMm: z.number().positive(),
        views: z.array(view).min(1),
      }),
    )
    .min(1),
})
export type BodyPlanFile = z.infer<typeof bodyPlanFile>

/** Bodies whose plan is drawn so far. */
const drawn: readonly BodyStyle[] = ['coupe']
const read = new Map<BodyStyle, BodyPlanFile>()

/** Whether a body style has a plan. */
export const hasPlan = (body: BodyStyle): boolean => drawn.includes(body)

/** Reads and checks the plan of a body once; throws `not-found` for a body that is not drawn yet. */
export function readBodyPlan(body: BodyStyle): BodyPlanFile {
  const known = read.get(body)
  if (known) return known
  if (!hasPlan(body)) {
    throw new ProblemError(
      'not-found',
      'Only the plan of the coupé is drawn so far. The record keeps this body; work from the list of panels instead of the drawing.',
      { field: 'body' },
    )
  }
  const plan = bodyPlanFile.parse(JSON.parse(readFileSync(resourcePath('body-plans', `${body}.json`), 'utf8')))
  read.set(body, plan)
  return plan
}
