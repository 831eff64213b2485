import type { DateCodeElement, DateCodeGrammar } from '../../../shared-types/date-code-grammar.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'

/** No date code we know of has more than twenty marks; a path through a grammar is never longer than this. */
const MOST_ELEMENTS = 500

/**
 * Refuses a grammar that cannot be followed to an end or contradicts itself: pieces in a ring, repetition without a last
 * time or of nothing, a piece that is not there, a row of letters with the same letter twice.
 * @throws ProblemError `input-refused` naming the grammar and the cure.
 */
export function checkGrammar(grammar: DateCodeGrammar): void {
  const refuse = (message: string): never => {
    throw new ProblemError('input-refused', `Date code “${grammar.label}”: ${message}`, { field: 'grammars' })
  }
  if (grammar.usedFrom > grammar.usedTo) refuse('its last year of use lies before its first; exchange them.')
  const elements = [grammar.elements, ...Object.values(grammar.pieces)].flat()
  for (const element of elements) checkElement(element, grammar, refuse)
  const ring = Object.keys(grammar.pieces).find((name) => leadsTo(name, name, grammar, new Set()))
  if (ring !== undefined)
    refuse(`the piece “${ring}” contains itself and would never end; write it out as far as it goes.`)
  if (sizeOf(grammar.elements, grammar) > MOST_ELEMENTS)
    refuse(`written out, it has more than ${MOST_ELEMENTS} elements; let its pieces repeat less often.`)
  for (const element of elements) {
    if (element.kind === 'repeated' && canBeEmpty(grammar.pieces[element.name] ?? [], grammar))
      refuse(
        `the repeated piece “${element.name}” can be empty and would never end; give it one mark that must be there.`,
      )
  }
}

function checkElement(element: DateCodeElement, grammar: DateCodeGrammar, refuse: (message: string) => never): void {
  switch (element.kind) {
    case 'figures':
      if (element.minDigits > element.maxDigits)
        refuse('a number has more figures at least than at most; exchange them.')
      if (element.field === 'year' && ![1, 2, 4].includes(element.maxDigits))
        refuse('a year is written with one, two or four figures.')
      return
    case 'letters': {
      if (new Set(element.letters.toUpperCase()).size !== element.letters.length)
        refuse(`the row of letters ${element.letters} has one letter twice.`)
      if (element.repeats && element.field !== 'year') refuse('only a row of letters for years can begin anew.')
      return
    }
    case 'piece':
    case 'repeated':
      if (grammar.pieces[element.name] === undefined)
        refuse(`the piece “${element.name}” is used and not described; add it under its name.`)
      if (element.kind !== 'repeated') return
      if (element.atMost === null)
        refuse(`the piece “${element.name}” may repeat without end; say how often it stands at most.`)
      if (element.atMost !== null && element.atMost < element.atLeast)
        refuse(`the piece “${element.name}” stands more often at least than at most; exchange them.`)
      return
    case 'table':
    case 'fixed':
      return
  }
}

/** Elements of a grammar without rings, with all pieces and repetitions written out. */
function sizeOf(elements: readonly DateCodeElement[], grammar: DateCodeGrammar): number {
  let size = 0
  for (const element of elements) {
    const times = element.kind === 'repeated' ? (element.atMost ?? 0) : 1
    const inside =
      element.kind === 'piece' || element.kind === 'repeated' ? sizeOf(grammar.pieces[element.name] ?? [], grammar) : 0
    size += 1 + times * inside
    if (size > MOST_ELEMENTS) return size
  }
  return size
}

const namesIn = (elements: readonly DateCodeElement[]): string[] =>
  elements.flatMap((element) => (element.kind === 'piece' || element.kind === 'repeated' ? [element.name] : []))

function leadsTo(from: string, to: string, grammar: DateCodeGrammar, seen: Set<string>): boolean {
  if (seen.has(from)) return false
  seen.add(from)
  return namesIn(grammar.pieces[from] ?? []).some((name) => name === to || leadsTo(name, to, grammar, seen))
}

const canBeEmpty = (elements: readonly DateCodeElement[], grammar: DateCodeGrammar): boolean =>
  elements.every((element) => {
    if (element.kind === 'fixed') return element.optional
    if (element.kind === 'piece') return element.optional || canBeEmpty(grammar.pieces[element.name] ?? [], grammar)
    return element.kind === 'repeated' && element.atLeast === 0
  })
