/** A set of items as sorted numbers. */
export type ItemSet = readonly number[]

/**
 * All minimal sets that meet every set of a family, after one more set is added (Berge's algorithm: C. Berge,
 * Hypergraphs, 1989). Start from `[[]]`, which meets the empty family. A set grown by one item can only contain a set that
 * met the added one by that very item, so nothing else is compared.
 */
export function meetAlso(hitting: readonly ItemSet[], added: ItemSet): readonly ItemSet[] {
  const must = new Set(added)
  const kept = hitting.filter((each) => each.some((item) => must.has(item)))
  const rivals = new Map(added.map((item) => [item, kept.filter((each) => each.includes(item))]))
  const grown: ItemSet[] = []
  for (const each of hitting) {
    if (each.some((item) => must.has(item))) continue
    const own = new Set(each)
    for (const item of added) {
      own.add(item)
      const needless = rivals.get(item)?.some((rival) => rival.every((of) => own.has(of))) ?? false
      if (!needless) grown.push([...own].sort((one, other) => one - other))
      own.delete(item)
    }
  }
  return [...kept, ...grown.sort((one, other) => one.length - other.length)]
}
