/** Lines that stay together, as far as choosing where pages end must know them. */
export interface Unit {
  readonly lines: number
  /** The same where the unit begins a page: without empty lines above it, with what is repeated there. */
  readonly linesAtTop: number
  /** Lines of its section's head, when it opens a section; 0 otherwise. */
  readonly headLines: number
  /** Begins a page whatever stands before it. */
  readonly opensPage: boolean
  /** Goes on with a block or a table begun above it. */
  readonly runsOn: boolean
}

/** Fewest lines of a section under its head where the head follows on a page that another section began. */
const LEAST_UNDER_HEAD = 8
/** Share of a page that is full enough for the next section to open a page of its own. */
const FULL_ENOUGH = 0.5
/** Cost of a section that follows on a page, in squared lines; what it stands for: some 12 lines left empty. */
const FOLLOWING = 144
/** Cost of parting a block or a table: as much as so many squared lines left empty. */
const PARTING = 36
/** Weight of each line a page lacks to be full enough. */
const SHORT = 8
/** More than any pages could cost. */
const UNWANTED = 1e9

interface Choice {
  readonly cost: number
  /** First unit of the page after. */
  readonly next: number
}

interface Setting {
  readonly capacity: number
  readonly closed: boolean
  readonly costFrom: (index: number) => number
}

/**
 * Which units begin a page, so that none is left nearly empty: of all ways to divide them the one with the least squared
 * lines left empty is taken, as D. E. Knuth and M. F. Plass do for the lines of a paragraph (Breaking paragraphs into
 * lines, Software: Practice and Experience 11, 1981). A page that a section ends may be half empty; the next section opens
 * a page then, and follows on the same one where that would be emptier still and some lines of it fit. Otherwise lines
 * are drawn over from the pages before.
 * @param used lines already taken on the page the first unit would stand on
 * @param closed whether a page begins after the last unit, whatever stands there
 * @returns indices of the units that begin a page, rising
 */
export function pageBeginnings(units: readonly Unit[], capacity: number, used: number, closed: boolean): number[] {
  const choices: Choice[] = new Array(units.length)
  const costFrom = (index: number): number => choices[index]?.cost ?? 0
  const best = (start: number, taken: number) => bestPage(units, start, taken, { capacity, closed, costFrom })
  for (let index = units.length - 1; index >= 0; index--) choices[index] = best(index, 0)
  const beginnings: number[] = []
  let at = used > 0 && units.length > 0 ? best(0, used).next : 0
  for (; at < units.length; at = choices[at]?.next ?? units.length) beginnings.push(at)
  return beginnings
}

/** The best end of a page on which `start` comes next and so many lines are taken. */
function bestPage(
  units: readonly Unit[],
  start: number,
  taken: number,
  { capacity, closed, costFrom }: Setting,
): Choice {
  let best: Choice = { cost: Number.POSITIVE_INFINITY, next: units.length }
  let lines = taken
  let following = 0
  let underHead = Number.POSITIVE_INFINITY
  for (let end = start; ; end++) {
    const next = units[end]
    if (lines > 0 || next === undefined) {
      const ends = next === undefined ? (closed ? 'part' : 'open') : isPart(next) ? 'part' : 'within'
      const lacks = ends === 'within' && underHead < LEAST_UNDER_HEAD ? UNWANTED : 0
      const cost =
        emptyCost(lines, ends, capacity) + (next?.runsOn === true ? PARTING : 0) + following + lacks + costFrom(end)
      if (cost <= best.cost) best = { cost, next: end }
    }
    const begins = next !== undefined && (next.opensPage || (next.headLines > 0 && lines >= FULL_ENOUGH * capacity))
    if (next === undefined || (begins && lines > 0)) return best
    if (lines === 0) lines = next.linesAtTop
    else {
      lines += next.lines
      if (lines > capacity) return best
      if (next.headLines > 0) {
        following += FOLLOWING
        underHead = 0
      }
      underHead += next.lines - next.headLines
    }
  }
}

/** Whether something new begins with it. */
const isPart = ({ opensPage, headLines }: Unit): boolean => opensPage || headLines > 0

/** What the lines left empty cost: little where a part of the report ends, nothing where it is not yet known what follows. */
function emptyCost(lines: number, ends: 'within' | 'part' | 'open', capacity: number): number {
  if (ends === 'open') return 0
  return ends === 'part' ? SHORT * Math.max(0, FULL_ENOUGH * capacity - lines) ** 2 : (capacity - lines) ** 2
}
