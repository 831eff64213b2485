import type { z } from 'zod'
import { boundInWords } from '../../shared-types/bound-in-words.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'

/** Bounds of one request as a whole; the schemas bound its fields. A list of 5,000 photographs fits. */
export const inputBounds = { depth: 32, values: 200_000, characters: 8_000_000 }

const reservedNames = new Set(['__proto__', 'constructor', 'prototype'])
const LONGEST_PATH = 200

interface Waiting {
  readonly value: unknown
  readonly path: string
  readonly depth: number
}

const refused = (message: string, path: string) => {
  const field = path.slice(0, LONGEST_PATH)
  return new ProblemError('input-refused', message, { field: field === '' ? undefined : field })
}

/** Refuses names that reach into an object's prototype, at any depth, and what is deeper or larger than its bounds. */
function checkBounds(input: unknown, bounds: typeof inputBounds): void {
  const waiting: Waiting[] = [{ value: input, path: '', depth: 0 }]
  let values = 0
  let characters = 0
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { value, path, depth } = next
    values += 1
    if (typeof value === 'string') characters += value.length
    if (values > bounds.values || characters > bounds.characters || depth > bounds.depth) {
      throw refused('That is more than one request may hold. Send it in smaller parts.', path)
    }
    if (typeof value !== 'object' || value === null) continue
    for (const name of Object.keys(value)) {
      const field = path === '' ? name : `${path}.${name}`
      if (reservedNames.has(name)) throw refused(`A field may not be called "${name}". Leave it out.`, field)
      characters += name.length
      waiting.push({ value: (value as Record<string, unknown>)[name], path: field, depth: depth + 1 })
    }
  }
}

/** What a person can bring about by typing: said for a form, whose field it stands under, and so without a path. */
const typedByHand: ReadonlySet<string> = new Set(['too_small', 'too_big', 'invalid_format', 'custom'])

/** Turns the first thing a schema objects to into words, with the path of the field. */
function refusal(error: z.ZodError): ProblemError {
  const issue = error.issues[0]
  const unknown = issue?.code === 'unrecognized_keys' ? (issue.keys[0] ?? '') : null
  const field = [...(issue?.path.map(String) ?? []), ...(unknown === null ? [] : [unknown])].join('.')
  const shown = field.slice(0, LONGEST_PATH)
  if (unknown !== null) return refused(`"${shown}" is not part of this request. Leave it out and try again.`, field)
  const objection = issue?.message.slice(0, 300).replace(/\.$/, '') ?? 'it is not what is asked for'
  if (typedByHand.has(issue?.code ?? '')) return refused(`${objection}. Correct it and try again.`, field)
  return refused(
    `${shown === '' ? 'The request' : `"${shown}"`} was refused: ${objection}. Correct it and try again.`,
    field,
  )
}

/**
 * What came through a door, as its schema has it. Throws `input-refused` with the path of the field that was refused and
 * what to do about it.
 */
export function checkedBy<Schema extends z.ZodType>(
  schema: Schema,
  input: unknown,
  bounds = inputBounds,
): z.infer<Schema> {
  checkBounds(input, bounds)
  const read = schema.safeParse(input, { error: boundInWords })
  if (!read.success) throw refusal(read.error)
  return read.data
}
