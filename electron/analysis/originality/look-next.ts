import type { WeighedPanel } from '../../../shared-types/computations.ts'
import type { LookNext } from '../../../shared-types/judgement.ts'

const MOST = 8

const greatestFirst = (one: WeighedPanel, other: WeighedPanel): number => other.areaM2 - one.areaM2

/**
 * What to look at next, first form: panels of the walk not yet looked at, greatest surface first; then filler whose
 * back nobody has seen; then metal not determined; then what the level of inspection leaves out or could not be reached.
 */
export function lookNext(panels: readonly WeighedPanel[]): readonly LookNext[] {
  const whole = panels.reduce((total, panel) => total + panel.areaM2, 0)
  const share = (panel: WeighedPanel) => `${((100 * panel.areaM2) / whole).toFixed(1)} % of the surface`
  const unseen = panels.filter((panel) => panel.inspection === 'not inspected')
  const fromTheFront = (panel: WeighedPanel) =>
    panel.inspection === 'inspected' &&
    !panel.backSeen &&
    (panel.metal === 'filler over metal' ||
      (panel.metal === 'not determined' && panel.findings.some((finding) => finding.filler)))
  const undetermined = (panel: WeighedPanel) =>
    panel.inspection === 'inspected' && panel.metal === 'not determined' && !fromTheFront(panel)
  const of = (some: readonly WeighedPanel[], what: string, why: (panel: WeighedPanel) => string) =>
    some.toSorted(greatestFirst).map((panel) => ({ panelId: panel.id, what: `${panel.label}${what}`, why: why(panel) }))
  return [
    ...of(
      unseen.filter((panel) => panel.walked),
      '',
      (panel) => `Not inspected: ${share(panel)} may be anything.`,
    ),
    ...of(panels.filter(fromTheFront), ', from behind', (panel) => `Filler seen from the front only: ${share(panel)}.`),
    ...of(panels.filter(undetermined), ', seams and edges', (panel) => `Metal not determined: ${share(panel)}.`),
    ...of(
      unseen.filter((panel) => !panel.walked),
      '',
      (panel) => `Left out by the level of inspection: ${share(panel)} may be anything.`,
    ),
    ...of(
      panels.filter((panel) => panel.inspection === 'not accessible'),
      ', by another way',
      (panel) => `Not accessible (${panel.reason}): ${share(panel)} may be anything.`,
    ),
  ].slice(0, MOST)
}
