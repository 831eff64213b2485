/** Numbers of spots as written in a form, runs drawn together: `1-20 24`. */
export function rangesOf(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((one, other) => one - other)
  const runs: [number, number][] = []
  for (const number of sorted) {
    const last = runs.at(-1)
    if (last !== undefined && last[1] === number - 1) last[1] = number
    else runs.push([number, number])
  }
  return runs
    .map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from} ${to}` : `${from}-${to}`))
    .join(' ')
}

/** Numbers named by a text such as `R1-20, 24`, of those that are known, and the words that name none of them. */
export function rangesFrom(
  text: string,
  known: readonly number[],
): { readonly numbers: number[]; readonly unknown: string[] } {
  const words = text
    .replace(/\s*[-–—]\s*/gu, '-')
    .replace(/\bR\s*(?=\d)/giu, '')
    .split(/[\s,;]+/u)
    .filter((word) => word !== '')
  const numbers: number[] = []
  const unknown: string[] = []
  for (const word of words) {
    const [, from, to] = /^(\d+)(?:-R?(\d+))?$/iu.exec(word) ?? []
    const named = known.filter((number) => number >= Number(from) && number <= Number(to ?? from))
    if (from === undefined || named.length === 0) unknown.push(word)
    numbers.push(...named)
  }
  return { numbers: [...new Set(numbers)], unknown }
}
