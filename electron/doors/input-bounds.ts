import { ProblemError } from '../../shared-types/problem.ts'

/** Bounds of one request as a whole; the schemas bound its fields. A list of 5,000 photographs fits. */
export const inputBounds = { depth: 32, values: 200_000, characters: 8_000_000 } as const

const reservedNames = new Set(['__proto__', 'constructor', 'prototype'])

interface Waiting {
  readonly value: unknown
  readonly path: string
  readonly depth: number
}

const tooLarge = (path: string) =>
  new ProblemError('input-refused', 'That is more than one request may hold. Send it in smaller parts.', {
    field: path === '' ? undefined : path,
  })

/**
 * Walks a request before any schema sees it: refuses names that reach into an object's prototype, at any depth, and
 * whatever is deeper or larger than a request can sensibly be. Throws `input-refused` with the path of the field.
 */
export function checkInputBounds(input: unknown): void {
  const waiting: Waiting[] = [{ value: input, path: '', depth: 0 }]
  let values = 0
  let characters = 0
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { value, path, depth } = next
    values += 1
    if (typeof value === 'string') characters += value.length
    if (values > inputBounds.values || characters > inputBounds.characters || depth > inputBounds.depth) {
      throw tooLarge(path)
    }
    if (typeof value !== 'object' || value === null) continue
    for (const name of Object.keys(value)) {
      const field = path === '' ? name : `${path}.${name}`
      if (reservedNames.has(name)) {
        throw new ProblemError('input-refused', `A field may not be called "${name}". Leave it out.`, { field })
      }
      characters += name.length
      waiting.push({ value: (value as Record<string, unknown>)[name], path: field, depth: depth + 1 })
    }
  }
}
