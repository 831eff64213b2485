import type { IdentityTell } from '../../../shared-types/identity-model.ts'
import type { SheetTell } from '../../../shared-types/reference-fact.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'
import type { ModelDraft } from './model-draft.ts'
import type { Complain } from './sheet-names.ts'

/** Shares of a tell's values, in their order. */
export type Shares = readonly number[]
type Shown = string | Readonly<Record<string, number>>

/** Shares written with a few decimals may miss 1 by this much. */
const ROUNDING = 1e-6

const entries = (shown: Shown): readonly (readonly [string, number])[] =>
  typeof shown === 'string' ? [[shown, 1]] : Object.entries(shown)

/** What is wrong with shares over some values; null when nothing is. */
export function sharesFault(shown: Shown, ids: readonly string[]): { what: string; cure: string } | null {
  const unknown = entries(shown).find(([value]) => !ids.includes(value))
  if (unknown !== undefined)
    return { what: `“${unknown[0]}” is no value here.`, cure: `The values are ${ids.slice(0, 8).join(', ')}.` }
  const sum = entries(shown).reduce((total, [, share]) => total + share, 0)
  if (Math.abs(sum - 1) <= ROUNDING) return null
  return { what: `The shares add up to ${Number(sum.toPrecision(6))}.`, cure: 'They must add up to 1.' }
}

/** Shares in the order of the values. */
export function shareRow(shown: Shown, ids: readonly string[]): Shares {
  const given = new Map(entries(shown))
  return ids.map((id) => given.get(id) ?? 0)
}

const byName = (names: readonly string[], shares: Shares): Record<string, number> =>
  Object.fromEntries(names.map((name, at) => [name, shares[at] ?? 0]))

/**
 * How a tell is read, for the engine. A mixture is read as the values it is made of, each misread as that value is; what
 * is wrong altogether is then written as one more way of being replaced, alike over the values, which is the same number.
 * @returns null with complaints when its shares do not fit.
 */
export function tellReading(
  draft: ModelDraft,
  sheet: ReferenceSheet,
  tell: SheetTell,
  ids: readonly string[],
  mixtures: ReadonlyMap<string, Shares>,
  complain: Complain,
): IdentityTell['reads'] | null {
  const replaced = tell.replaced?.share ?? 0
  if (replaced + tell.wrong > 1 + ROUNDING) {
    complain(['wrong'], `Replaced and wrong add up to ${replaced + tell.wrong}.`, 'They may be 1 at most.')
    return null
  }
  const fault = tell.replaced === null ? null : sharesFault(tell.replaced.by, ids)
  if (fault !== null) {
    complain(['replaced', 'by'], fault.what, fault.cure)
    return null
  }
  const service = tell.replaced === null ? ids.map(() => 0) : shareRow(tell.replaced.by, ids)
  const misread = misreadRows(tell, ids, complain)
  const donor =
    tell.travelsWith === null
      ? undefined
      : draft.names.resolve(sheet, tell.travelsWith, 'donor', ['travelsWith'], complain)
  if (misread === null || donor === null) return null
  const kind = { kind: 'part' as const, donor: donor?.key ?? null }
  const rows = ids.map((id, at) => [id, byName(ids, misread[at] ?? [])] as const)
  if (mixtures.size === 0)
    return {
      ...kind,
      replaced,
      service: byName(ids, service),
      wrong: tell.wrong,
      misread: typeof tell.misread === 'number' ? tell.misread : Object.fromEntries(rows),
    }
  const mixed = [...mixtures].map(([name, shares]) => {
    const read = ids.map((_, outcome) =>
      shares.reduce((sum, share, at) => sum + share * (misread[at]?.[outcome] ?? 0), 0),
    )
    return [name, byName(ids, read)] as const
  })
  const changed = replaced + tell.wrong
  const fitted = service.map((share) => (changed === 0 ? 0 : (replaced * share + tell.wrong / ids.length) / changed))
  return {
    ...kind,
    replaced: changed,
    service: byName(ids, fitted),
    wrong: 0,
    misread: Object.fromEntries([...rows, ...mixed]),
  }
}

/** By value as fitted, by value as read; null with a complaint when its shares do not fit. */
export function misreadRows(
  { misread }: SheetTell,
  ids: readonly string[],
  complain: Complain,
): readonly Shares[] | null {
  if (typeof misread === 'number')
    return ids.map((_, fitted) =>
      ids.map((_read, read) => (ids.length === 1 ? 1 : read === fitted ? 1 - misread : misread / (ids.length - 1))),
    )
  const given = new Map(Object.entries(misread))
  for (const [value, row] of given) {
    const fault = ids.includes(value) ? sharesFault(row, ids) : sharesFault(value, ids)
    if (fault === null) continue
    complain(['misread', value], fault.what, fault.cure)
    return null
  }
  return ids.map((id, fitted) => {
    const row = given.get(id)
    return row === undefined ? ids.map((_, read) => (read === fitted ? 1 : 0)) : shareRow(row, ids)
  })
}

/** Adds a sheet's donors: what each kind of donor brings to the tells that travel with it. */
export function compileDonors(draft: ModelDraft, sheet: ReferenceSheet): void {
  sheet.donors.forEach((donor, at) => {
    const key = `${sheet.sheetId}/${donor.id}`
    const complain = draft.complaining(sheet, ['donors', at])
    const taken = donor.kinds.reduce((sum, kind) => sum + kind.share, 0)
    if (taken > 1 + ROUNDING)
      complain(
        ['kinds'],
        `The shares add up to ${taken}.`,
        'They may be 1 together at most; what is left had no donor.',
      )
    const kinds = donor.kinds.map((kind, position) => {
      const fitted: Record<string, Record<string, number>> = {}
      for (const [reference, shares] of Object.entries(kind.brings)) {
        const path = ['kinds', position, 'brings', reference]
        const found = draft.names.resolve(sheet, reference, 'tell', path, complain)
        const tell = draft.tells.find(({ id }) => id === found?.key)
        if (found === null || tell === undefined) continue
        const ids = draft.variables.find(({ name }) => name === tell.variable)?.values ?? []
        if (tell.reads.kind !== 'part' || tell.reads.donor !== key)
          complain(
            path,
            `The tell ${reference} does not travel with ${donor.id}.`,
            `Say so there: travelsWith ${donor.id}.`,
          )
        const fault = sharesFault(shares, ids)
        if (fault !== null) complain(path, fault.what, fault.cure)
        fitted[found.key] = byName(ids, shareRow(shares, ids))
      }
      return { id: kind.id, share: kind.share, fitted }
    })
    draft.donors.push({ id: key, kinds })
    draft.cites.set(key, [draft.cite(sheet, donor)])
  })
}
