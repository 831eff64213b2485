import type { SheetNumber } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet, SheetVariable } from '../../../shared-types/reference-sheet.ts'
import { partDefinition } from '../parts-list.ts'
import { changeInOrder, inOrder, spanOf } from './date-spans.ts'
import { isPanelKnown, panelsKnown } from './places-to-look.ts'
import { type Complain, cureForName, type SheetNames } from './sheet-names.ts'
import { noPlaces, problemAt, type SheetPath, type SheetProblem } from './sheet-problem.ts'

const kinds = ['rules', 'tells', 'donors', 'counts', 'interchange', 'numbers', 'dateCodes'] as const

/** What is wrong with single facts and names of a sheet; what its facts say together is the engine's business. */
export function checkFacts(sheet: ReferenceSheet, names: SheetNames): readonly SheetProblem[] {
  const problems: SheetProblem[] = []
  const problem = problemAt(noPlaces)
  const complain: Complain = (path, what, cure) => problems.push(problem(path, what, cure))
  const warn: Complain = (path, what, cure) => problems.push(problem(path, what, cure, 'warning'))

  once(sheet.sources, ['sources'], 'source', complain)
  once(sheet.variables, ['variables'], 'variable', complain)
  sheet.variables.forEach((variable, at) => {
    checkVariable(variable, ['variables', at], complain, warn)
  })
  onceAmongFacts(sheet, complain)
  const sources = sheet.sources.map(({ id }) => id)
  const cited = (source: string | null, path: SheetPath) => {
    if (source !== null && !sources.includes(source))
      complain(path, `There is no source “${source}”.`, cureForName(source, sources))
  }
  for (const kind of kinds) for (const [at, { source }] of sheet[kind].entries()) cited(source, [kind, at, 'source'])
  const part = (id: string, path: SheetPath) => {
    if (partDefinition(id) === undefined)
      complain(path, `“${id}” is no part of the parts list.`, 'Take its id from the list of parts.')
  }
  const daysInOrder = (days: DaysOfFact, path: SheetPath) => checkDays(days, path, complain)

  sheet.rules.forEach((rule, at) => {
    if ('from' in rule) daysInOrder(rule, ['rules', at])
  })
  sheet.tells.forEach((tell, at) => {
    const path = ['tells', at]
    tell.where.panels.forEach((panel, position) => {
      if (!isPanelKnown(panel))
        complain([...path, 'where', 'panels', position], `“${panel}” is no panel.`, cureForName(panel, panelsKnown()))
    })
    tell.where.parts.forEach((id, position) => {
      part(id, [...path, 'where', 'parts', position])
    })
    if (tell.where.panels.length + tell.where.parts.length === 0 && tell.where.words === '')
      warn([...path, 'where'], 'Nothing says where to look.', 'Name a panel, a part, or describe the place.')
    if (tell.follows.kind === 'as built') return
    once(tell.follows.values, [...path, 'follows', 'values'], 'value', complain)
    const measured = tell.follows.values.filter(({ measure }) => measure !== null).length
    if (tell.unit === null ? measured > 0 : measured < tell.follows.values.length)
      complain([...path, 'unit'], 'A unit and a measure for each value belong together.', 'Give both, or neither.')
    tell.follows.cases.forEach((each, position) => {
      const own = [...path, 'follows', 'cases', position]
      cited(each.source, [...own, 'source'])
      daysInOrder(each, own)
    })
  })
  sheet.interchange.forEach(({ part: id, on, carriers }, at) => {
    part(id, ['interchange', at, 'part'])
    names.literals(sheet, on, ['interchange', at, 'on'], complain)
    carriers.forEach((carrier, position) => {
      if (!inOrder(spanOf(carrier.from, carrier.until)))
        complain(['interchange', at, 'carriers', position], 'It begins after it ends.', 'Exchange the days.')
    })
  })
  sheet.numbers.forEach((number, at) => {
    if (number.part !== null) part(number.part, ['numbers', at, 'part'])
    checkNumber(number, ['numbers', at], complain)
  })
  sheet.dateCodes.forEach(({ part: id, leadDays }, at) => {
    part(id, ['dateCodes', at, 'part'])
    if (leadDays !== null && leadDays.least > leadDays.most)
      complain(['dateCodes', at, 'leadDays'], 'The least is more than the most.', 'Exchange the two.')
  })
  return problems
}

type DaysOfFact = Parameters<typeof changeInOrder>[0] extends infer Day
  ? { readonly from: Day | null; readonly until: Day | null }
  : never

function checkDays({ from, until }: DaysOfFact, path: SheetPath, complain: Complain): void {
  for (const [key, day] of [
    ['from', from],
    ['until', until],
  ] as const)
    if (day !== null && !changeInOrder(day))
      complain([...path, key], 'Its earliest day is after its latest.', 'Exchange the two.')
  const first = from === null || typeof from === 'string' ? from : from.earliest
  const last = until === null || typeof until === 'string' ? until : until.latest
  if (first !== null && last !== null && first > last)
    complain([...path, 'until'], `It ends on ${last}, before it begins on ${first}.`, 'Exchange the days.')
}

function once(named: readonly { readonly id: string }[], path: SheetPath, what: string, complain: Complain): void {
  const seen = new Map<string, number>()
  named.forEach(({ id }, at) => {
    const before = seen.get(id)
    if (before !== undefined)
      complain([...path, at, 'id'], `There is another ${what} “${id}”, the ${before + 1}.`, 'Rename one.')
    else seen.set(id, at)
  })
}

function onceAmongFacts(sheet: ReferenceSheet, complain: Complain): void {
  const seen = new Map<string, string>()
  for (const kind of kinds)
    sheet[kind].forEach(({ id }, at) => {
      const before = seen.get(id)
      if (before !== undefined)
        complain(
          [kind, at, 'id'],
          `Two facts are called “${id}”; the other is ${before}.`,
          'Rename one: a report cites facts by name.',
        )
      else seen.set(id, `${kind}[${at + 1}]`)
    })
}

function checkVariable(variable: SheetVariable, path: SheetPath, complain: Complain, warn: Complain): void {
  once([...variable.values, ...variable.groups], [...path, 'values'], 'value or group', complain)
  const ids = variable.values.map(({ id }) => id)
  variable.groups.forEach(({ values }, at) => {
    for (const value of values)
      if (!ids.includes(value))
        complain(
          [...path, 'groups', at, 'values'],
          `“${value}” is no value of ${variable.id}.`,
          cureForName(value, ids),
        )
  })
  if (variable.kind === 'choice') {
    if (variable.values.some(({ from, to }) => from !== null || to !== null))
      complain([...path, 'kind'], 'Its values have days, but it is a choice.', 'Write kind: dates and its basis.')
    return
  }
  if (variable.basis === null)
    complain([...path, 'basis'], 'Nothing says which day it is.', 'Write basis: manufacture, or another of the list.')
  variable.values.forEach(({ id, from, to }, at) => {
    const place = [...path, 'values', at]
    const first = at === 0
    const last = at === variable.values.length - 1
    if ((from === null && !first) || (to === null && !last))
      complain(
        place,
        `${id} has no ${from === null ? 'from' : 'to'}.`,
        'Only the first may begin, and the last end, with an open day.',
      )
    const span = spanOf(from, to)
    if (!inOrder(span)) complain(place, `${id} ends before it begins.`, 'Exchange the days.')
    const before = variable.values[at - 1]
    if (before === undefined) return
    const gap = span.first - spanOf(before.from, before.to).last - 1
    if (gap < 0)
      complain(place, `${id} begins before ${before.id} has ended.`, 'Days follow each other, each in one value.')
    if (gap > 0 && Number.isFinite(gap))
      warn(
        place,
        `${gap} days between ${before.id} and ${id} are in neither.`,
        'Close the gap, if cars were built then.',
      )
  })
}

/** What its marks and stretches mean is checked where they are compiled. */
function checkNumber(number: SheetNumber, path: SheetPath, complain: Complain) {
  number.places.forEach((place, at) => {
    const own = [...path, 'places', at]
    if (place.kind !== 'sequence') return
    if (place.minDigits > place.maxDigits)
      complain([...own, 'minDigits'], 'It is more than maxDigits.', 'Exchange the two.')
    place.stretches.forEach((stretch, position) => {
      const there = [...own, 'stretches', position]
      if (stretch.first > stretch.last) complain(there, 'It ends before it begins.', 'Exchange first and last.')
      checkDays(stretch, there, complain)
    })
  })
}
