import { describe, expect, it } from 'vitest'
import { rustGrade as computedGrade } from '../../electron/analysis/grades/rust-grade.ts'
import { rustGrade } from '../../renderer/places/walk-round/finding-draft.ts'
import { findingTitle, sizeText } from '../../renderer/places/walk-round/finding-texts.ts'
import type { Finding } from '../../shared-types/finding.ts'

const finding: Finding = {
  number: 2,
  panelId: 'front-side.L',
  kind: 'filler',
  layer: 'skin',
  extent: null,
  lengthMm: 260,
  widthMm: 220,
  depthMm: null,
  sizeUncertaintyMm: 10,
  severity: 'marked',
  urgency: 'within a year',
  action: 'repair',
  learned: 'measured',
  learnedFrom: '',
  grade: null,
  suspectedCause: '',
  dangerous: false,
  exhibits: [],
  note: 'Up to 1.9 mm thick. The back was seen.',
}

describe('a finding in its list', () => {
  it('is named by its first sentence, and a decimal point ends no sentence', () => {
    expect(findingTitle(finding)).toBe('Filler: Up to 1.9 mm thick')
    expect(findingTitle({ ...finding, note: '' })).toBe('Filler')
  })
  it('shows its sizes with no more places than were given', () => {
    expect(sizeText(finding, 'mm')).toMatch(/^260.mm long, 220.mm wide ± 10.mm \(k = 2\)$/)
    expect(sizeText({ ...finding, widthMm: 22.5 }, 'mm')).toMatch(/^260\.0.mm long, 22\.5.mm wide ± 10\.0.mm/)
  })
  it('says so when no uncertainty was stated', () => {
    expect(sizeText({ ...finding, sizeUncertaintyMm: null }, 'mm')).toContain('uncertainty not stated')
  })
})

it('a degree of rusting reads the same on screen as it is computed', () => {
  for (const affectedPercent of [0, 0.01, 0.05, 0.2, 0.5, 0.7, 1, 5, 8, 20, 45, 100]) {
    expect(rustGrade(affectedPercent)).toBe(computedGrade({ affectedPercent }).iso4628Part3.grade)
  }
})
