import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'

/*
 * What a sheet means, worked out from its words build by build, without the program's model of it: the judge of compiled
 * sheets. One sheet, days given as single days, variables named without their sheet; small sheets only.
 */

export type Build = Readonly<Record<string, string>>
type Condition = Readonly<Record<string, readonly string[]>>
type Days = { readonly from: unknown; readonly until: unknown }
type Tell = ReferenceSheet['tells'][number]

const DAY = 86_400_000
const day = (text: string) => Date.parse(text) / DAY

export function everyBuild(sheet: ReferenceSheet): Build[] {
  let builds: Build[] = [{}]
  for (const { id, values } of sheet.variables)
    builds = builds.flatMap((build) => values.map((value) => ({ ...build, [id]: value.id })))
  return builds
}

function meets(sheet: ReferenceSheet, build: Build, condition: Condition): boolean {
  return Object.entries(condition).every(([variable, named]) => {
    const groups = sheet.variables.find(({ id }) => id === variable)?.groups ?? []
    return named.some(
      (name) =>
        name === build[variable] || groups.find(({ id }) => id === name)?.values.includes(build[variable] ?? ''),
    )
  })
}

/** Share of the days of the build's stretch on which a fact with these days holds. */
function shareOfDays(sheet: ReferenceSheet, build: Build, { from, until }: Days): number {
  if (from === null && until === null) return 1
  const dates = sheet.variables.find(({ kind }) => kind === 'dates')
  const stretch = dates?.values.find(({ id }) => id === build[dates.id])
  if (stretch?.from == null || stretch.to == null) throw new Error('The judge knows closed stretches only.')
  let [held, all] = [0, 0]
  for (let at = day(stretch.from); at <= day(stretch.to); at++) {
    all += 1
    if ((from === null || at >= day(from as string)) && (until === null || at <= day(until as string))) held += 1
  }
  return held / all
}

export function isLegal(sheet: ReferenceSheet, build: Build): boolean {
  return sheet.rules.every((rule) => {
    if (rule.kind === 'only from' || rule.kind === 'only until') {
      const days = rule.kind === 'only from' ? { from: rule.day, until: null } : { from: null, until: rule.day }
      return !meets(sheet, build, rule.when) || shareOfDays(sheet, build, days) > 0
    }
    const whole = shareOfDays(sheet, build, rule) === 1
    if (rule.kind === 'not built together') return !(whole && meets(sheet, build, rule.when))
    if (rule.kind === 'requires')
      return (
        !(whole && meets(sheet, build, rule.when)) ||
        Object.entries(rule.needs).some(([variable, values]) => meets(sheet, build, { [variable]: values }))
      )
    const own = build[rule.variable]
    const others = sheet.rules.filter(
      (other) => (other.kind === 'option' || other.kind === 'standard') && other.variable === rule.variable,
    )
    if (rule.kind === 'standard')
      return (
        !(whole && meets(sheet, build, rule.on)) ||
        own === rule.value ||
        others.some((other) => other.kind === 'option' && other.value === own)
      )
    return (
      own !== rule.value ||
      others.some(
        (other) =>
          (other.kind === 'option' || other.kind === 'standard') &&
          other.value === own &&
          meets(sheet, build, other.on) &&
          shareOfDays(sheet, build, other) > 0,
      )
    )
  })
}

/** P(value of the tell as built | build), first case first. */
function asBuilt(sheet: ReferenceSheet, tell: Tell, build: Build): Map<string, number> {
  const shown = new Map<string, number>()
  const { follows } = tell
  if (follows.kind === 'as built') return shown.set(build[follows.variable] ?? '', 1)
  const add = (shows: string | Readonly<Record<string, number>>, part: number) => {
    for (const [value, share] of typeof shows === 'string' ? [[shows, 1] as const] : Object.entries(shows))
      shown.set(value, (shown.get(value) ?? 0) + part * share)
  }
  let left = 1
  for (const each of follows.cases) {
    const part = meets(sheet, build, each.when) ? left * shareOfDays(sheet, build, each) : 0
    add(each.shows, part)
    left -= part
  }
  const even = Object.fromEntries(follows.values.map(({ id }) => [id, 1 / follows.values.length]))
  add(follows.otherwise ?? even, left)
  return shown
}

/** P(tell read as `read` | build). */
export function chanceOfReading(sheet: ReferenceSheet, tell: Tell, build: Build, read: string): number {
  const { follows } = tell
  const ids =
    follows.kind === 'by cases'
      ? follows.values.map(({ id }) => id)
      : (sheet.variables.find(({ id }) => id === follows.variable)?.values ?? []).map(({ id }) => id)
  const seen = (fitted: string): number => {
    if (typeof tell.misread !== 'number') {
      const row = tell.misread[fitted]
      return row === undefined ? Number(fitted === read) : (row[read] ?? 0)
    }
    return fitted === read ? 1 - tell.misread : tell.misread / (ids.length - 1)
  }
  let original = 0
  for (const [value, share] of asBuilt(sheet, tell, build)) original += share * seen(value)
  const replaced = tell.replaced?.share ?? 0
  const alone =
    (1 - replaced - tell.wrong) * original + replaced * (tell.replaced?.by[read] ?? 0) + tell.wrong / ids.length
  const donor = sheet.donors.find(({ id }) => id === tell.travelsWith)
  if (donor === undefined) return alone
  let [chance, left] = [0, 1]
  for (const { share, brings } of donor.kinds) {
    const brought = brings[tell.id]
    const given =
      brought === undefined
        ? alone
        : Object.entries(brought).reduce((sum, [value, part]) => sum + part * seen(value), 0)
    chance += share * given
    left -= share
  }
  return chance + left * alone
}

/** Posterior of every variable after some readings under a prior, by going through all builds. */
export function posteriorByHand(
  sheet: ReferenceSheet,
  prior: (build: Build) => number,
  readings: readonly (readonly [Tell, string])[],
): Record<string, Record<string, number>> {
  const weighed = everyBuild(sheet)
    .filter((build) => isLegal(sheet, build))
    .map((build) => ({
      build,
      weight: readings.reduce(
        (product, [tell, read]) => product * chanceOfReading(sheet, tell, build, read),
        prior(build),
      ),
    }))
  const total = weighed.reduce((sum, { weight }) => sum + weight, 0)
  return Object.fromEntries(
    sheet.variables.map(({ id, values }) => [
      id,
      Object.fromEntries(
        values.map((value) => [
          value.id,
          weighed.reduce((sum, { build, weight }) => (build[id] === value.id ? sum + weight : sum), 0) / total,
        ]),
      ),
    ]),
  )
}
