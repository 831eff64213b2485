/**
 * What was said now, with every part that is like what was said before taken from there, so that a drawing of what has
 * not changed can be told by its identity alone and left as it stands. For plain data, as it comes through the door.
 */
export function keptWhereAlike<Value>(before: unknown, now: Value): Value {
  if (Object.is(before, now)) return now
  if (Array.isArray(now)) {
    if (!Array.isArray(before)) return now
    // Rows with a name of their own are found again wherever they stand now.
    const named = new Map(before.flatMap((part: unknown) => (nameOf(part) === null ? [] : [[nameOf(part), part]])))
    const parts = now.map((part: unknown, at) => keptWhereAlike(named.get(nameOf(part)) ?? before[at], part))
    return (before.length === parts.length && parts.every((part, at) => part === before[at]) ? before : parts) as Value
  }
  if (!isRow(now) || !isRow(before)) return now
  const names = Object.keys(now)
  const parts = Object.fromEntries(names.map((name) => [name, keptWhereAlike(before[name], now[name])]))
  const alike = Object.keys(before).length === names.length && names.every((name) => parts[name] === before[name])
  return (alike ? before : parts) as Value
}

const nameOf = (value: unknown): unknown => (isRow(value) ? (value.key ?? value.id ?? null) : null)

const isRow = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
