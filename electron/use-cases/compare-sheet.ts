import { createHash } from 'node:crypto'
import type { ClaimView, IdentityView, VariableView } from '../../shared-types/identity-view.ts'
import type { SheetComparison } from '../../shared-types/sheet-comparison.ts'
import type { ShippedSheet } from '../sheets/reference/shipped-sheets.ts'
import { identityBy, shelfOf } from './identity-view.ts'
import type { Program } from './program.ts'
import { type SheetsOfRecord, sheetsOfRecord, sheetsTogether } from './sheets-of-record.ts'

/** Weights that change by less say the same. */
const LEAST_CHANGE = 0.005

/** What taking the sheet would change in the conclusions of the open record. Nothing is taken. */
export async function compareSheet(program: Program, { sheet, bytes }: ShippedSheet): Promise<SheetComparison> {
  const record = program.record()
  const view = record.view()
  const before = await sheetsOfRecord(record)
  const { sheetId, title, edition } = sheet
  const held = view.sheets.find((copy) => copy.sheetId === sheetId)
  const known = new Map([...before.sheets.map((each) => [each.sheetId, each] as const), [sheetId, sheet]])
  const after = sheetsTogether([...known.keys()], known)
  const copies = [
    ...view.sheets.filter((copy) => copy !== held),
    { ...(held ?? view.sheets[0]), sheetId, title, edition },
  ]
  const asked = { chainsOf: [], shelf: shelfOf(program) }
  const was = await identityBy(before, view, asked)
  const would = await identityBy(after, { ...view, sheets: copies as typeof view.sheets }, asked)
  return {
    ...{ sheetId, title, editionBefore: held?.edition ?? null, editionAfter: edition },
    same: held?.sha256 === createHash('sha256').update(bytes).digest('hex'),
    problemBefore: view.sheets.length === 0 ? null : was.problem,
    problemAfter: would.problem,
    legalBuilds: { before: was.legalBuilds, after: would.legalBuilds },
    buildsLeft: { before: was.buildsLeft, after: would.buildsLeft },
    variables: variablesChanged(was, would),
    claims: claimsOf(was, would).map(({ claim, ...each }) => ({
      claim,
      words: view.claims.find(({ number }) => number === claim)?.words ?? '',
      ...each,
    })),
    lost: view.observations.flatMap(({ tell, value }) => lostOf(before, after, tell, value)),
  }
}

function variablesChanged(was: IdentityView, would: IdentityView): SheetComparison['variables'] {
  const keys = [...new Set([...was.variables, ...would.variables].map(({ key }) => key))]
  const found = (view: IdentityView, key: string) => view.variables.find((variable) => variable.key === key)
  return keys.flatMap((key) => {
    const [before, after] = [found(was, key), found(would, key)]
    const weights = (variable: VariableView | undefined) => new Map(variable?.values.map((value) => [value.id, value]))
    const [old, fresh] = [weights(before), weights(after)]
    const values = [...new Set([...old.keys(), ...fresh.keys()])].flatMap((id) => {
      const [one, other] = [old.get(id), fresh.get(id)]
      if (Math.abs((one?.now ?? 0) - (other?.now ?? 0)) < LEAST_CHANGE) return []
      return [{ name: other?.name ?? one?.name ?? id, before: one?.now ?? null, after: other?.now ?? null }]
    })
    return values.length === 0 ? [] : [{ key, name: after?.name ?? before?.name ?? key, values }]
  })
}

const verdictOf = (claim: ClaimView | undefined) =>
  claim === undefined ? null : { verdict: claim.verdict, decibans: claim.decibans }

function claimsOf(was: IdentityView, would: IdentityView) {
  const numbers = [...new Set([...was.claims, ...would.claims].map(({ claim }) => claim))].sort((a, b) => a - b)
  const found = (view: IdentityView, number: number) => verdictOf(view.claims.find(({ claim }) => claim === number))
  return numbers.map((claim) => ({ claim, before: found(was, claim), after: found(would, claim) }))
}

function lostOf(before: SheetsOfRecord, after: SheetsOfRecord, key: string, value: string | null): readonly string[] {
  const tellIn = ({ compiled }: SheetsOfRecord) => compiled?.tells.find((tell) => tell.key === key)
  const [old, fresh] = [tellIn(before), tellIn(after)]
  const understood = fresh !== undefined && (value === null || fresh.values.some(({ id }) => id === value))
  return old === undefined || understood ? [] : [old.tell.name]
}
