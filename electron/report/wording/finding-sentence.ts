import type { Finding } from '../../../shared-types/finding.ts'
import type { Composer } from '../layout/composer.ts'
import { extentWords } from './sentences.ts'

const layerWords = { paint: 'in the paint', skin: 'in the skin', inner: 'in the inner structure' } as const

/** One line on a finding: "Left front wing: perforation in the skin, 310 × 25 ± 2 mm; marked, before use: repair." */
export function findingSentence(composer: Composer, finding: Finding): string {
  const { commission } = composer.content.record
  const extent = extentWords(finding, commission)
  const urgency = finding.urgency === 'none' ? '' : `, ${finding.urgency}`
  return `${composer.panelName(finding.panelId)}: ${finding.kind} ${layerWords[finding.layer]}${extent === '' ? '' : `, ${extent}`}; ${finding.severity === 'none' ? 'no damage' : finding.severity}${urgency}: ${finding.action}.`
}
