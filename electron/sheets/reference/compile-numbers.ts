import type { SheetNumber } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { NumberClass } from '../../analysis/identity/number-likelihood.ts'
import { decisionPaths, type WeighedCondition } from './decision-paths.ts'
import { type ModelDraft, weighedCondition } from './model-draft.ts'
import type { Complain } from './sheet-names.ts'

/** A number of a sheet as the model knows it. */
export interface CompiledNumber {
  /** `number sheet/number`: also the variable that says which sort of number a car left with. */
  readonly key: string
  readonly sheet: ReferenceSheet
  readonly number: SheetNumber
  /** Values of the variable in order, with what may stand at each place on such cars. */
  readonly classes: readonly { readonly value: string; readonly shares: NumberClass }[]
  /** By place the tell that is read off its marks; null where none is. */
  readonly readBy: readonly (string | null)[]
}

/** One thing a place may show: a row of marks, or a stretch of figures. */
interface Row {
  readonly place: number
  readonly condition: WeighedCondition
  /** True when it says something of the build. */
  readonly speaks: boolean
}

/**
 * Adds a sheet's numbers. Which marks and figures a car left with follows from its build; cars that left with the same
 * sort of number are one value of a variable of its own, so that all places of a number count as one observation.
 */
export function compileNumbers(draft: ModelDraft, sheet: ReferenceSheet): readonly CompiledNumber[] {
  return sheet.numbers.flatMap((number, at) => {
    const complain = draft.complaining(sheet, ['numbers', at])
    const rows = rowsOf(draft, sheet, number, complain)
    const readBy = number.places.map((place, position) =>
      place.kind === 'fixed' || place.readBy === null
        ? null
        : (draft.names.resolve(sheet, place.readBy, 'tell', ['places', position, 'readBy'], complain)?.key ?? null),
    )
    if (rows === null || !rows.some(({ speaks }) => speaks)) return []
    const paths = decisionPaths(
      rows.map(({ condition }) => condition),
      (met) => JSON.stringify(sharesByPlace(number, rows, met)),
    )
    if (paths === null) {
      complain(['places'], 'Too many combinations hang together here.', 'Let its marks mean fewer variables.')
      return []
    }
    const key = `number ${sheet.sheetId}/${number.id}`
    const cells = [...new Set(paths.map(({ cell }) => cell))]
    const values = cells.map((_, position) => `sort ${position + 1}`)
    draft.variables.push({ name: key, values })
    const cite = draft.cite(sheet, number)
    paths.forEach(({ ifs, cell }, position) => {
      const value = values[cells.indexOf(cell)] as string
      draft.addRules(`${key} shows #${position + 1}`, [{ ifs, thenAny: [[key, [value]]] }], [cite])
    })
    draft.cites.set(key, [cite])
    const classes = cells.map((cell, position) => ({
      value: values[position] as string,
      shares: JSON.parse(cell) as NumberClass,
    }))
    return [{ key, sheet, number, classes, readBy }]
  })
}

/** What each place may show, with the cars it belongs to; null with complaints when something in it is not known. */
function rowsOf(
  draft: ModelDraft,
  sheet: ReferenceSheet,
  { places }: SheetNumber,
  complain: Complain,
): readonly Row[] | null {
  const rows: Row[] = []
  for (const [place, own] of places.entries()) {
    if (own.kind === 'fixed') continue
    const list =
      own.kind === 'marks' ? own.rows.map(({ means }) => ({ means, from: null, until: null })) : own.stretches
    for (const [at, { means, ...days }] of list.entries()) {
      const path = ['places', place, own.kind === 'marks' ? 'rows' : 'stretches', at]
      const below: Complain = (rest, what, cure) => complain([...path, ...rest], what, cure)
      const when = draft.names.literals(sheet, means, ['means'], below)
      const dates = draft.datesFor(sheet, days, below)
      if (when === null || dates === null) return null
      const condition = weighedCondition(draft, when, dates, days)
      rows.push({ place, condition, speaks: condition.size > 0 })
    }
  }
  return rows
}

/** Shares of the rows of each place on cars that meet the rows so far; null where the place says nothing, or no row fits. */
function sharesByPlace(number: SheetNumber, rows: readonly Row[], met: readonly number[]): NumberClass {
  return number.places.map((_, place) => {
    const own = rows.flatMap((row, at) => (row.place === place ? [{ ...row, weight: met[at] ?? 0 }] : []))
    const sum = own.reduce((total, { weight }) => total + weight, 0)
    if (sum === 0 || !own.some(({ speaks }) => speaks)) return null
    // Shares that differ by rounding alone are one sort.
    return own.map(({ weight }) => Number((weight / sum).toPrecision(14)))
  })
}
