import { readFileSync } from 'node:fs'
import type { z } from 'zod'
import { resourcePath } from '../places-on-disk.ts'

/** Reads a list shipped with the program, in a folder of `resources/`, and checks it; throws with the file's name and the first fault when it is damaged. */
export function readList<Schema extends z.ZodType>(
  fileName: string,
  schema: Schema,
  folder = 'lists',
): z.infer<Schema> {
  const checked = schema.safeParse(JSON.parse(readFileSync(resourcePath(folder, fileName), 'utf8')))
  if (!checked.success) {
    const fault = checked.error.issues[0]
    throw new Error(
      `The list ${fileName} shipped with the program is damaged at ${fault?.path.join('.')}: ${fault?.message}. Install the program again.`,
    )
  }
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
