import type { PlanMarks } from '../../../shared-types/figure.ts'

/** The rows of `after`, each the very object it was before where nothing in it changed; the old list when nothing did. */
function sameRows<Row>(before: readonly Row[], after: readonly Row[]): readonly Row[] {
  const known = new Map(before.map((row) => [JSON.stringify(row), row]))
  const rows = after.map((row) => known.get(JSON.stringify(row)) ?? row)
  return rows.length === before.length && rows.every((row, index) => row === before[index]) ? before : rows
}

/** New marks that share with the old ones whatever did not change, so that only what changed is drawn again. */
export function sameMarks(before: PlanMarks | null, after: PlanMarks): PlanMarks {
  if (before === null) return after
  return {
    panels: sameRows(before.panels, after.panels),
    extents: sameRows(before.extents, after.extents),
    callouts: sameRows(before.callouts, after.callouts),
    places: sameRows(before.places, after.places),
    captions: sameRows(before.captions, after.captions),
    table: sameRows(before.table, after.table),
    legend: sameRows(before.legend, after.legend),
  }
}
