import type { CalloutMark, ExtentMark, PanelMark, PlanMarks, PlanSheet, PlanView } from '../../shared-types/figure.ts'
import type { PanelId } from '../../shared-types/panel.ts'
import {
  CAPS_SPACING,
  type ColourRole,
  lineWeights,
  NIGHT_LINE_FACTOR,
  type SheetName,
  sheets,
  typeScale,
  unseenEdge,
} from '../../shared-types/tokens.ts'
import { hatchPattern } from './hatch-svg.ts'

/** How one sheet is to be drawn. */
export interface SvgChoice {
  readonly sheet: PlanSheet
  readonly marks: PlanMarks
  readonly look: SheetName
  readonly pixelsPerMm: number
  readonly inHand?: PanelId
}

/** Paper left free round the sheet for captions and callouts, px. */
const MARGIN_PX = 40
/** Sheet colour kept round a detail, from side to side, so that no hatch hides it. */
const CLEARED_PX = 2.6

const escaped = (text: string): string =>
  text.replace(/[&<>"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[sign] ?? '')

/**
 * One sheet of the plan as SVG text: the same geometry that screen and report draw, for reference pictures and the
 * pictures of the documents.
 */
export function renderPlanSvg({ sheet, marks, look, pixelsPerMm, inHand }: SvgChoice): string {
  const colours = sheets[look]
  const thinner = look === 'night' ? NIGHT_LINE_FACTOR : 1
  const width = Math.round(sheet.widthMm * pixelsPerMm) + 2 * MARGIN_PX
  const height = Math.round(sheet.heightMm * pixelsPerMm) + 2 * MARGIN_PX
  const pen: Pen = {
    scale: pixelsPerMm,
    stroke: (role, weight) =>
      `fill="none" stroke="${colours[role]}" stroke-width="${(weight * thinner).toFixed(2)}" vector-effect="non-scaling-stroke" stroke-linejoin="round" stroke-linecap="round"`,
    colour: (role) => colours[role],
  }
  const byId = new Map(marks.panels.map((panel) => [panel.panelId, panel]))
  const hatches = [...new Set([...marks.panels.map((p) => p.hatch), ...marks.extents.map((e) => e.hatch)])]
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="${-MARGIN_PX} ${-MARGIN_PX} ${width} ${height}" font-family="'Source Sans 3', sans-serif">`,
    `<title>${escaped(sheet.name)}</title>`,
    `<defs>${hatches.map((hatch) => (hatch ? hatchPattern(hatch, colours.ink, thinner, pixelsPerMm) : '')).join('')}</defs>`,
    `<rect x="${-MARGIN_PX}" y="${-MARGIN_PX}" width="${width}" height="${height}" fill="${colours.sheet}"/>`,
    ...sheet.views.map((view) => viewSvg(view, byId, marks.extents, pen, inHand)),
    ...marks.captions.map(({ text, at }) => captionSvg(text, at, pen)),
    ...marks.callouts.map((callout) => calloutSvg(callout, pen, callout.panelId === inHand)),
    '</svg>',
  ].join('\n')
}

interface Pen {
  readonly scale: number
  stroke(role: ColourRole, weight: number): string
  colour(role: ColourRole): string
}

function viewSvg(
  view: PlanView,
  marks: ReadonlyMap<PanelId, PanelMark>,
  extents: readonly ExtentMark[],
  pen: Pen,
  inHand: PanelId | undefined,
): string {
  const { scale } = pen
  const transform = `matrix(${scale} 0 0 ${scale} ${(view.at.x - view.box.u) * scale} ${(view.at.y - view.box.v) * scale})`
  const dotted = `stroke-dasharray="0 ${unseenEdge.pitchPx}"`
  const panels = view.panels.map(({ panelId, outline }) => {
    const mark = marks.get(panelId)
    const fill = mark && mark.hatch !== 'clean' ? `<path d="${outline}" fill="url(#${mark.hatch})"/>` : ''
    const edge =
      mark === undefined
        ? ''
        : mark.edge === 'dotted'
          ? `<path d="${outline}" ${pen.stroke('sheet', 1.6)}/><path d="${outline}" ${pen.stroke('ink2', unseenEdge.dotPx)} ${dotted}/>`
          : `<path d="${outline}" ${pen.stroke('ink', lineWeights.shut.px)}/>`
    return { fill, edge, solid: mark?.edge !== 'dotted', outline, panelId }
  })
  const ink = view.ink.map(({ weight, path, occlude }) => {
    const role = {
      silhouette: 'ink',
      shut: 'ink',
      detail: 'ink',
      form: 'ink2',
      centre: 'faint',
      station: 'hairline',
    } as const
    const dash = weight === 'centre' ? 'stroke-dasharray="14 3 3 3"' : ''
    const hide = occlude ? `<path d="${path}" fill="${pen.colour('sheet')}"/>` : ''
    return `${hide}<path d="${path}" ${pen.stroke(role[weight], lineWeights[weight].px)} ${dash}/>`
  })
  const found = extents.filter((extent) => extent.view === view.id)
  const isHatched = panels.some(({ fill }) => fill !== '')
  const details = view.ink
    .filter(({ weight, occlude }) => weight === 'detail' && !occlude)
    .map(({ path }) => path)
    .join(' ')
  const hand = panels.filter(({ panelId }) => panelId === inHand)
  return [
    `<g transform="${transform}">`,
    `<path d="${view.silhouette}" fill="${pen.colour('sheet')}"/>`,
    ...panels.map(({ fill }) => fill),
    ...found.map((extent) => extentGround(extent, pen)),
    isHatched ? `<path d="${details}" ${pen.stroke('sheet', CLEARED_PX)}/>` : '',
    ...panels.filter(({ solid }) => solid).map(({ edge }) => edge),
    ...panels.filter(({ solid }) => !solid).map(({ edge }) => edge),
    `<path d="${view.silhouette}" ${pen.stroke('ink', lineWeights.silhouette.px)}/>`,
    ...ink,
    ...found.map((extent) => extentEdge(extent, pen)),
    ...hand.map(({ outline }) => `<path d="${outline}" ${pen.stroke('accent', lineWeights.inHand.px)}/>`),
    '</g>',
  ].join('\n')
}

const extentPath = ({ shape, points }: ExtentMark): string =>
  `M${points.map(({ u, v }) => `${u} ${v}`).join('L')}${shape === 'area' ? 'Z' : ''}`

/** Sheet colour under an area that was found, and its own hatch. */
function extentGround(extent: ExtentMark, pen: Pen): string {
  if (extent.shape !== 'area' || extent.points.length === 0) return ''
  const path = extentPath(extent)
  const hatch = extent.hatch === null ? '' : `<path d="${path}" fill="url(#${extent.hatch})"/>`
  return `<path d="${path}" fill="${pen.colour('sheet')}"/>${hatch}`
}

/** Dashed round an area, a heavy line, or a dot. */
function extentEdge(extent: ExtentMark, pen: Pen): string {
  const [first] = extent.points
  if (first === undefined) return ''
  if (extent.shape === 'point') {
    return `<circle cx="${first.u}" cy="${first.v}" r="${2.5 / pen.scale}" fill="${pen.colour('ink')}"/>`
  }
  const path = extentPath(extent)
  if (extent.shape === 'area') return `<path d="${path}" ${pen.stroke('ink', 0.9)} stroke-dasharray="3 2"/>`
  const weight = extent.hatch === 'rusted-through' ? 3 : 1.5
  return `<path d="${path}" ${pen.stroke('sheet', 5)}/><path d="${path}" ${pen.stroke('ink', weight)}/>`
}

function captionSvg(text: string, at: { x: number; y: number }, pen: Pen): string {
  const [size] = typeScale.caps
  const place = `x="${(at.x * pen.scale).toFixed(1)}" y="${(at.y * pen.scale).toFixed(1)}"`
  return `<text ${place} font-size="${size}" font-weight="600" letter-spacing="${CAPS_SPACING}em" fill="${pen.colour('ink')}">${escaped(text.toUpperCase())}</text>`
}

function calloutSvg({ figure, ring, leader, name, word, textSide }: CalloutMark, pen: Pen, inHand: boolean): string {
  const at = (point: { x: number; y: number }) =>
    `${(point.x * pen.scale).toFixed(1)} ${(point.y * pen.scale).toFixed(1)}`
  const role = inHand ? 'accent' : 'ink'
  const [x, y] = [ring.x * pen.scale, ring.y * pen.scale]
  const end = leader.at(-1)
  const side = textSide === 'right' ? 1 : -1
  const text = (line: string, drop: number, weight: number, tone: ColourRole) =>
    `<text x="${(x + side * 13).toFixed(1)}" y="${(y + drop).toFixed(1)}" font-size="11.5" font-weight="${weight}" fill="${pen.colour(tone)}" stroke="${pen.colour('sheet')}" stroke-width="3" paint-order="stroke" text-anchor="${side > 0 ? 'start' : 'end'}">${escaped(line)}</text>`
  return [
    leader.length > 1 ? `<path d="M${leader.map(at).join('L')}" ${pen.stroke(role, lineWeights.leader.px)}/>` : '',
    end
      ? `<circle cx="${(end.x * pen.scale).toFixed(1)}" cy="${(end.y * pen.scale).toFixed(1)}" r="1.7" fill="${pen.colour(role)}"/>`
      : '',
    `<circle cx="${x.toFixed(1)}" cy="${y.toFixed(1)}" r="8.5" fill="${pen.colour('sheet')}" stroke="${pen.colour(role)}" stroke-width="${inHand ? 1.4 : 0.9}"/>`,
    `<text x="${x.toFixed(1)}" y="${(y + 3.6).toFixed(1)}" font-size="10.5" font-family="'Source Code Pro', monospace" text-anchor="middle" fill="${pen.colour(role)}">${figure}</text>`,
    name ? text(name, -1.5, 600, role) : '',
    word ? text(word, 10.5, 400, 'ink2') : '',
  ].join('')
}
