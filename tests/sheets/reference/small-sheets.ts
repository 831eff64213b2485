import { readSheet } from '../../../electron/sheets/reference/read-sheet.ts'
import type { ReferenceSheet } from '../../../shared-types/reference-sheet.ts'

/** An invented line with every kind of fact, small enough to be gone through by hand. */
export const smallSheetText = `form: 1
sheetId: teasel
title: Teasel 1958
edition: "1"
sources:
  - {id: ledger, who: Works, where: Ledger, page: "4", surePercent: 80, learned: invented}
  - {id: returns, who: Sales office, where: Returns, surePercent: 40, learned: invented}
variables:
  - id: built
    name: Build date
    kind: dates
    basis: manufacture
    values:
      - {id: q1, name: First quarter, from: 1958-01-01, to: 1958-03-31}
      - {id: q2, name: Second quarter, from: 1958-04-01, to: 1958-06-30}
      - {id: q3, name: Third quarter, from: 1958-07-01, to: 1958-09-30}
    groups:
      - {id: first-half, name: First half, values: [q1, q2]}
  - id: series
    name: Series
    values: [{id: plain, name: Plain}, {id: fine, name: Fine}]
  - id: gearbox
    name: Gearbox
    values: [{id: three, name: Three speeds}, {id: four, name: Four speeds}, {id: overdrive, name: Overdrive}]
rules:
  - {id: no-plain-four, source: ledger, kind: not built together, when: {series: [plain], gearbox: [four]}}
  - {id: fine-standard, source: ledger, kind: standard, variable: gearbox, value: four, on: {series: [fine]}}
  - {id: overdrive-option, kind: option, variable: gearbox, value: overdrive, on: {series: [fine]}, share: 0.2, from: 1958-04-01}
tells:
  - id: bracket
    source: ledger
    name: Bracket on the bulkhead
    lookAt: The bracket behind the battery.
    where: {panels: [], parts: [], words: bulkhead}
    effort: 1
    access: doors and lids open
    follows:
      kind: by cases
      values: [{id: welded, name: Welded}, {id: screwed, name: Screwed}]
      cases:
        - {when: {series: [fine]}, shows: screwed}
        - {when: {}, until: 1958-05-15, shows: welded}
      otherwise: screwed
    misread: 0.02
    wrong: 0.01
  - id: box
    name: Gearbox as found
    lookAt: The casting number.
    where: {words: from below}
    effort: 3
    access: from below
    follows: {kind: as built, variable: gearbox}
    replaced: {share: 0.1, by: {three: 0.7, four: 0.3}}
    travelsWith: breaker
donors:
  - id: breaker
    name: Parts from a breaker
    kinds:
      - {id: van, name: Van, share: 0.05, brings: {box: {three: 1}}}
counts:
  - {id: by-series, source: ledger, name: By series, cells: [{when: {series: [plain]}, built: 300}, {when: {series: [fine]}, built: 100}]}
  - {id: by-half, source: returns, name: By half, others: 0, cells: [{when: {built: [first-half]}, built: 250}, {when: {built: [q3]}, built: 150}]}
`

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

/** Reads a sheet that must be sound in form. */
export function sheetFrom(text: string): ReferenceSheet {
  const { sheet, problems } = readSheet(bytesOf(text))
  if (sheet === null) throw new Error(JSON.stringify(problems, null, 1))
  return sheet
}
