import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import type { z } from 'zod'
import { resourcePath } from '../places-on-disk.ts'

/**
 * SHA-256 of every list that held against its schemas when the program was bundled, by folder and name: checking them
 * again at each start would take longer than reading them. A program run from its sources has none.
 */
declare const LISTS_FOUND_SOUND: Readonly<Record<string, string>>
const foundSound = typeof LISTS_FOUND_SOUND === 'undefined' ? {} : LISTS_FOUND_SOUND

const foundHere = new Map<string, string>()

/** SHA-256 of the lists this process has read and checked itself, by folder and name. */
export const listsFoundSound = (): Readonly<Record<string, string>> => Object.fromEntries(foundHere)

/**
 * Reads a list shipped with the program, in a folder of `resources/`. One that was not checked when the program was
 * bundled, or was changed since, is checked now; throws with the file's name and the first fault when it is damaged.
 * @param schema says what is in order and changes no value
 */
export function readList<Schema extends z.ZodType>(
  fileName: string,
  schema: Schema,
  folder = 'lists',
): z.infer<Schema> {
  const bytes = readFileSync(resourcePath(folder, fileName))
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  const content: unknown = JSON.parse(bytes.toString('utf8'))
  const name = `${folder}/${fileName}`
  if (foundSound[name] === sha256) return content as z.infer<Schema>
  const checked = schema.safeParse(content)
  if (!checked.success) {
    const fault = checked.error.issues[0]
    throw new Error(
      `The list ${fileName} shipped with the program is damaged at ${fault?.path.join('.')}: ${fault?.message}. Install the program again.`,
    )
  }
  foundHere.set(name, sha256)
  return checked.data
}

/** Runs `make` once, when first asked. */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
