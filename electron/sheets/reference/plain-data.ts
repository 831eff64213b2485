/** What stands at some keys and positions of plain data; undefined when it is not there. */
export function valueAt(data: unknown, path: readonly (string | number)[]): unknown {
  let found = data
  for (const step of path) {
    if (typeof found !== 'object' || found === null || !Object.hasOwn(found, step)) return undefined
    found = (found as Readonly<Record<string | number, unknown>>)[step]
  }
  return found
}
