import { ProblemError } from '../../../shared-types/problem-error.ts'

/** Refuses input at a named place; `cure` tells what to do about it. */
export function refuse(field: string, what: string, cure: string): never {
  throw new ProblemError('input-refused', `${what} ${cure}`, { field })
}

/** Position of each name; refuses a name given twice. */
export function positions(names: readonly string[], field: string, what: string): ReadonlyMap<string, number> {
  const found = new Map<string, number>()
  names.forEach((name, position) => {
    if (found.has(name)) refuse(`${field}[${position}]`, `${what} “${name}” is there twice.`, 'Rename or remove one.')
    found.set(name, position)
  })
  return found
}

/** Position of a name that must be known; the message lists names that begin alike. */
export function positionOf(name: string, known: ReadonlyMap<string, number>, field: string, what: string): number {
  const position = known.get(name)
  if (position !== undefined) return position
  const begins = name.slice(0, 2).toLowerCase()
  const alike = [...known.keys()].filter((other) => other.toLowerCase().startsWith(begins)).slice(0, 3)
  const cure = alike.length > 0 ? `Did you mean ${alike.join(' or ')}?` : 'Correct the name, or add it.'
  return refuse(field, `There is no ${what} “${name}”.`, cure)
}
