import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { Connection } from '../../electron/record/connection.ts'
import { createRecord } from '../../electron/record/open-record.ts'
import { column } from '../../electron/record/register-table.ts'
import { registerNames, registers } from '../../electron/record/registers.ts'
import { carNumber, commission, consent, particulars, visit } from '../../shared-types/car.ts'
import { claim } from '../../shared-types/claim.ts'
import { correction } from '../../shared-types/correction.ts'
import { edition } from '../../shared-types/edition.ts'
import { exhibit } from '../../shared-types/exhibit.ts'
import { finding } from '../../shared-types/finding.ts'
import { observation } from '../../shared-types/observation.ts'
import { ownWeight } from '../../shared-types/own-weight.ts'
import { panelState } from '../../shared-types/panel.ts'
import { partEntry } from '../../shared-types/part.ts'
import { gauge, gaugeCheck, spot } from '../../shared-types/reading.ts'
import type { RegisterName } from '../../shared-types/record.ts'
import { sheetCopy } from '../../shared-types/sheet-copy.ts'
import { beginning, scratchFolder } from './sample-record.ts'

const schemas: { readonly [R in RegisterName]: z.ZodObject } = {
  particulars,
  commission,
  visits: visit,
  consents: consent,
  carNumbers: carNumber,
  panels: panelState,
  findings: finding,
  spots: spot,
  gauges: gauge,
  gaugeChecks: gaugeCheck,
  parts: partEntry,
  weights: ownWeight,
  claims: claim,
  sheets: sheetCopy,
  observations: observation,
  corrections: correction,
  exhibits: exhibit,
  editions: edition,
}

let scratch: ReturnType<typeof scratchFolder>
let connection: Connection
beforeEach(async () => {
  scratch = scratchFolder()
  await (await createRecord(scratch.file('sedge.wmk'), beginning)).close()
  connection = await Connection.open(scratch.file('sedge.wmk'), 'read')
})
afterEach(async () => {
  await connection.close()
  scratch.remove()
})

/** What JSON Schema says of one property: its words, and whether it may be null. */
interface Described {
  readonly enum?: readonly string[]
  readonly type?: string
  readonly anyOf?: readonly Described[]
}

describe.each(registerNames)('the register %s', (register) => {
  const described = z.toJSONSchema(schemas[register], { io: 'output' }).properties as Record<string, Described>

  it('has a column for each property of the contract, and no other', async () => {
    const rows = await connection.all(`PRAGMA table_info(${registers[register].table})`)
    const found = rows.map(({ name }) => `"${name}"`).filter((name) => name !== '"the"')
    expect(found.sort()).toEqual(Object.keys(described).map(column).sort())
    expect(Object.keys(registers[register].columns).sort()).toEqual(Object.keys(described).sort())
  })

  it('allows just the words of the contract, and NULL just where the contract allows null', async () => {
    const table = registers[register].table
    const { sql } = (await connection.get('SELECT sql FROM sqlite_schema WHERE name = ?', table)) ?? {}
    const info = await connection.all(`PRAGMA table_info(${table})`)
    for (const [property, said] of Object.entries(described)) {
      const name = column(property)
      const either = [said, ...(said.anyOf ?? [])]
      const words = either.find((one) => one.enum)?.enum
      const list = new RegExp(`CHECK \\(${name} IN \\(([^)]*'[^)]*)\\)\\)`).exec(String(sql))?.[1]
      const allowed = list === undefined ? undefined : [...list.matchAll(/'([^']*)'/g)].map(([, word]) => word)
      expect([property, allowed]).toEqual([property, words])
      const cell = info.find((row) => `"${row.name}"` === name)
      const nullable = either.some((one) => one.type === 'null')
      expect([property, cell?.notnull === 0 && cell.pk === 0]).toEqual([property, nullable])
    }
  })
})
