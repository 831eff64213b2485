import type { z } from 'zod'
import type { Extent, FindingDraft, surfaceGrade } from '../../../shared-types/finding.ts'
import type { FindingKind, FindingLayer } from '../../../shared-types/words.ts'

/** A finding while it is entered: the kind is open until it is chosen, the extent may still be being drawn. */
export type FindingInHand = Omit<FindingDraft, 'kind'> & { readonly kind: FindingKind | null }

const layerOfKind: { readonly [K in FindingKind]?: FindingLayer } = {
  overspray: 'paint',
  'masking edge': 'paint',
}

/** What a new finding is taken to be until it is said otherwise; the sheet states each of these. */
export function newFinding(panelId: string): FindingInHand {
  return {
    panelId,
    kind: null,
    layer: 'skin',
    extent: null,
    lengthMm: null,
    widthMm: null,
    depthMm: null,
    sizeUncertaintyMm: null,
    severity: 'slight',
    urgency: 'none',
    action: 'record only',
    learned: 'seen',
    learnedFrom: '',
    grade: null,
    suspectedCause: '',
    dangerous: false,
    exhibits: [],
    note: '',
  }
}

/** The layer a kind lies in unless told otherwise. */
export const usualLayer = (kind: FindingKind): FindingLayer => layerOfKind[kind] ?? 'skin'

/** Grades that make sense for a kind: rust for corrosion and perforation, blisters for corrosion and paint. */
export function gradesFor(kind: FindingKind | null): readonly ('ISO 4628-3' | 'ISO 4628-2')[] {
  if (kind === 'corrosion') return ['ISO 4628-3', 'ISO 4628-2']
  return kind === 'perforation' ? ['ISO 4628-3'] : []
}

/**
 * Degree of rusting Ri for a rusted share, ISO 4628-3:2016 table 1: Ri 0 none, Ri 1 0.05 %, Ri 2 0.5 %, Ri 3 1 %,
 * Ri 4 8 %, Ri 5 40 to 50 %. Between two of them the worse one is taken, so that a grade never flatters.
 */
export function rustGrade(affectedPercent: number): string {
  const steps: readonly (readonly [number, string])[] = [
    [0, 'Ri 0'],
    [0.05, 'Ri 1'],
    [0.5, 'Ri 2'],
    [1, 'Ri 3'],
    [8, 'Ri 4'],
  ]
  return steps.find(([limit]) => affectedPercent <= limit)?.[1] ?? 'Ri 5'
}

/** A grade in words: `Ri 3 (ISO 4628-3), 1 % estimated`. */
export function gradeText(grade: z.infer<typeof surfaceGrade>): string {
  if (grade.standard === 'ISO 4628-2') return `${grade.quantity}(S${grade.size}) (ISO 4628-2)`
  return `${rustGrade(grade.affectedPercent)} (ISO 4628-3), ${grade.affectedPercent} % ${grade.basis}`
}

/** True once an extent has points enough for its shape. */
export function extentStands(extent: Extent): boolean {
  return extent.points.length >= { point: 1, line: 2, area: 3 }[extent.shape]
}
