import { capital } from '../../../shared-types/capital.ts'
import type { Finding } from '../../../shared-types/finding.ts'
import type { LengthUnit } from '../../../shared-types/units.ts'
import { lineLengthMm, polygonAreaMm2 } from '../../drawing/outline-shape.ts'
import { areaText, lengthText } from '../../parts-of-page/figure-text.ts'
import { measuredForm, unstatedForm } from '../../parts-of-page/number-forms.ts'

/** Where a finding lies, with its drawn size. */
export function extentText(finding: Finding, unit: LengthUnit): string {
  const { extent } = finding
  if (extent === null) return 'whole panel'
  if (extent.shape === 'point') return 'at a point'
  if (extent.shape === 'line') return `along ${lengthText(lineLengthMm(extent.points), unit)}, as drawn`
  return `${areaText(polygonAreaMm2(extent.points), unit)}, as drawn`
}

/** Sizes of a finding with their uncertainty; empty when nothing was measured. */
export function sizeText(finding: Finding, unit: LengthUnit): string {
  const sizes = [
    ['long', finding.lengthMm],
    ['wide', finding.widthMm],
    ['deep', finding.depthMm],
  ] as const
  const spread = finding.sizeUncertaintyMm
  // No more places than were given: 260 ± 10 mm, not 260.0 ± 10.0 mm.
  const given = [...sizes.map(([, mm]) => mm), spread]
  const places = unit === 'in' ? 3 : given.every((mm) => mm === null || Number.isInteger(mm)) ? 0 : 1
  const measured = sizes.flatMap(([word, mm]) => (mm === null ? [] : [`${lengthText(mm, unit, places)} ${word}`]))
  if (measured.length === 0) return ''
  const sizesText = measured.join(', ')
  return spread === null ? unstatedForm(sizesText) : measuredForm(sizesText, lengthText(spread, unit, places))
}

/** One line that names a finding: its kind, and the beginning of its note. */
export function findingTitle(finding: Finding): string {
  const first = finding.note.split(/\n|[.;](?=\s|$)/)[0]?.trim() ?? ''
  const kind = capital(finding.kind)
  return first === '' ? kind : `${kind}: ${first.length > 70 ? `${first.slice(0, 68)}…` : first}`
}
