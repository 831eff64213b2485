import type { Commission, Particulars, Visit } from '../../../shared-types/car.ts'
import type { PlanTableRow } from '../../../shared-types/figure.ts'
import type { Finding, ViewId } from '../../../shared-types/finding.ts'
import { mmPer } from '../../../shared-types/shown-measure.ts'
import type { LengthUnit } from '../../../shared-types/units.ts'
import type { InspectionLevel } from '../../../shared-types/words.ts'
import { rustGrade } from '../../analysis/grades/rust-grade.ts'
import type { ReportContent } from '../report-content.ts'
import { dayText } from './dates.ts'
import { figure, NARROW, sizes } from './numbers.ts'

/** "built between 11 January 1960 and 30 March 1960", or what is known of it; empty when nothing is. */
export function builtInterval({ builtFrom, builtTo }: Particulars): string {
  if (builtFrom !== null && builtTo !== null) {
    if (builtFrom === builtTo) return `built on ${dayText(builtFrom)}`
    return `built between ${dayText(builtFrom)} and ${dayText(builtTo)}`
  }
  if (builtFrom !== null) return `built on or after ${dayText(builtFrom)}`
  return builtTo === null ? '' : `built on or before ${dayText(builtTo)}`
}

/** One examination in a sentence: where, light, weather, surface, support, temperature. */
export function conditionsSentence(visit: Visit): string {
  const words = [
    visit.place,
    visit.light,
    visit.weather,
    visit.surface,
    `car ${visit.support}`,
    visit.temperatureC === null ? '' : `${figure(visit.temperatureC)}${NARROW}°C`,
  ].filter((word) => word !== '')
  return `${words.join('; ')}.`
}

const levels = ['outside only', 'with openings', 'with inside', 'with underneath'] as const
const levelWords = ['outside', 'openings and engine bay', 'inside', 'underneath'] as const

const covered: { readonly [L in InspectionLevel]: string } = {
  'outside only': 'the outside only',
  'with openings': 'the outside, the openings and the engine bay only',
  'with inside': 'everything but the underside',
  'with underneath': 'the whole walk',
}

/** Why a panel beyond the level of inspection stands as not inspected: "the commission covers the outside only". */
export const levelCovers = (level: InspectionLevel): string => `the commission covers ${covered[level]}`

/** What the chosen level covers, and which intrusive steps were done, each with whether it was. */
export function levelDone(content: ReportContent): { readonly word: string; readonly done: boolean }[] {
  const reached = levels.indexOf(content.record.commission.level)
  const doneSteps = content.record.consents.filter((consent) => consent.given && consent.done !== '')
  return [
    ...levelWords.map((word, index) => ({ word, done: index <= reached })),
    ...doneSteps.map(({ step }) => ({ word: `done: ${step}`, done: true })),
    { word: 'parts removed, samples taken, engine run: see section 2', done: false },
  ]
}

/** What was seen of a panel: "replacement panel; refinished", or that it was not looked at. */
export function panelStateWords({
  inspection,
  metal,
  paint,
}: Pick<PlanTableRow, 'inspection' | 'metal' | 'paint'>): string {
  if (inspection !== 'inspected') return inspection
  if (metal === paint) return `metal and paint ${metal}`
  const named = (what: string, word: string) => (word.startsWith('not ') ? `${what} ${word}` : word)
  return `${named('metal', metal)}; ${named('paint', paint)}`
}

/** Extent of a finding as measured: sizes with uncertainty, depth by name; empty when nothing was measured. */
export function extentWords(finding: Finding, commission: Commission): string {
  const { lengthMm, widthMm, depthMm, sizeUncertaintyMm } = finding
  const flat = [lengthMm, widthMm].filter((length) => length !== null)
  const unit = commission.lengthUnit
  const words = [
    sizes(flat, sizeUncertaintyMm, unit),
    // One uncertainty is stated for all sizes; where it is wider than the depth it was not meant for it.
    depthMm === null
      ? ''
      : `depth ${sizes([depthMm], (sizeUncertaintyMm ?? 0) > depthMm ? null : sizeUncertaintyMm, unit)}`,
  ]
  return words.filter((word) => word !== '').join('; ')
}

/** Grade as the standard writes it, with the share it rests on. */
export function gradeWords(grade: Finding['grade']): string {
  if (grade === null) return ''
  if (grade.standard === 'ISO 4628-2') return `blistering ${grade.quantity}(S${grade.size}), ISO 4628-2`
  const name = rustGrade(grade).iso4628Part3.grade.replace(' ', NARROW)
  return `rust ${name}, ${figure(grade.affectedPercent, decimals(grade.affectedPercent))}${NARROW}% of the surface looked at, ${grade.basis}, ISO 4628-3`
}

const decimals = (value: number): number => Math.min(2, (String(value).split('.')[1] ?? '').length)

/** What a view shows, in a sentence. */
const viewWords: { readonly [V in ViewId]: string } = {
  left: 'the left side',
  right: 'the right side',
  roof: 'the car seen from above',
  under: 'the underside',
  front: 'the front',
  rear: 'the rear',
  openings: 'the sheet of openings',
  bay: 'the sheet of the engine bay',
  floor: 'the sheet of the inside',
}
const shapeWords = { point: 'a point', line: 'a line', area: 'an area' } as const

/**
 * Where a finding lies, in the axes of its view put into words: station behind the front datum, height above ground,
 * distance from the centre line; unfolded sheets keep their own axes.
 */
export function placeSentence({ extent }: Finding, unit: LengthUnit): string {
  if (extent === null) return 'Where: the whole panel.'
  const us = extent.points.map(({ u }) => u)
  const vs = extent.points.map(({ v }) => v)
  const said = figuresAsDrawn(unit)
  const heights = said.span(vs.map((v) => -v))
  const words = {
    left: `station ${said.span(us)}, height ${heights}`,
    right: `station ${said.span(us)}, height ${heights}`,
    roof: `station ${said.span(us)}, ${said.fromCentre(vs, 'left', 'right')}`,
    under: `station ${said.span(us)}, ${said.fromCentre(vs, 'left', 'right')}`,
    front: `${said.fromCentre(us, 'left', 'right')}, height ${heights}`,
    rear: `${said.fromCentre(us, 'right', 'left')}, height ${heights}`,
    openings: `across ${said.span(us)}, down ${said.span(vs)}`,
    bay: `across ${said.span(us)}, down ${said.span(vs)}`,
    floor: `across ${said.span(us)}, down ${said.span(vs)}`,
  }
  const unitWord = unit === 'in' ? 'inches' : unit
  return `Where: ${shapeWords[extent.shape]} on ${viewWords[extent.view]}, ${words[extent.view]}, in ${unitWord} as drawn on the plan.`
}

/** Decimals of a place on the plan: whole millimetres, or inches to a tenth. */
const DRAWN_DECIMALS: { readonly [U in LengthUnit]: number } = { mm: 0, in: 1 }

function figuresAsDrawn(unit: LengthUnit) {
  const decimals = DRAWN_DECIMALS[unit]
  const rounded = (mm: number) => Math.round((mm / mmPer(unit)) * 10 ** decimals) / 10 ** decimals
  const ends = (lengthsMm: readonly number[]) => [rounded(Math.min(...lengthsMm)), rounded(Math.max(...lengthsMm))]
  const say = (value: number) => figure(value, decimals)
  const span = (lengthsMm: readonly number[]): string => {
    const [low = 0, high = 0] = ends(lengthsMm)
    return low === high ? say(low) : `${say(low)} to ${say(high)}`
  }
  /** Distances from the centre line, each with its side: "115 to 257 to the left of the centre line". */
  const fromCentre = (distancesMm: readonly number[], positive: string, negative: string): string => {
    const [low = 0, high = 0] = ends(distancesMm)
    if (low < 0 && high > 0)
      return `from ${say(-low)} to the ${negative} to ${say(high)} to the ${positive} of the centre line`
    const side = low < 0 ? negative : positive
    return `${span(distancesMm.map(Math.abs))} to the ${side} of the centre line`
  }
  return { span, fromCentre }
}
