/** A set of items as sorted numbers. */
export type ItemSet = readonly number[]

const within = (small: ItemSet, large: ReadonlySet<number>): boolean => small.every((item) => large.has(item))

/**
 * All minimal sets that meet every set of a family, after one more set is added (Berge's algorithm: C. Berge,
 * Hypergraphs, 1989). Start from `[[]]`, which meets the empty family.
 */
export function meetAlso(hitting: readonly ItemSet[], added: ItemSet): readonly ItemSet[] {
  const must = new Set(added)
  const kept = hitting.filter((each) => each.some((item) => must.has(item)))
  const grown = hitting
    .filter((each) => !each.some((item) => must.has(item)))
    .flatMap((each) => added.map((item) => [...each, item].sort((one, other) => one - other)))
  const found: { readonly list: ItemSet; readonly set: ReadonlySet<number> }[] = kept.map((list) => ({
    list,
    set: new Set(list),
  }))
  for (const list of grown.sort((one, other) => one.length - other.length)) {
    const set = new Set(list)
    if (!found.some((each) => within(each.list, set))) found.push({ list, set })
  }
  return found.map(({ list }) => list)
}
