import { z } from 'zod'
import type { IdentityView } from './identity-view.ts'
import { observation } from './observation.ts'
import { asking, photographSource } from './request-line.ts'
import type { SheetComparison } from './sheet-comparison.ts'
import { sheetName } from './sheet-copy.ts'
import {
  type OpenedSheet,
  type OwnSheet,
  ownSheetName,
  type SheetCheck,
  type SheetDraft,
  sheetDraft,
  type TableForm,
  type TablesBrought,
} from './sheet-desk.ts'
import { requiredLine } from './units.ts'

/** Where a reference sheet comes from: a file, or the folder of the user's own. */
export const sheetOrigin = z.discriminatedUnion('from', [
  ...photographSource.options,
  z.strictObject({ from: z.literal('own sheet'), name: ownSheetName }),
])

/** Requests about sheets of the user's own: written, checked, tried and compared. */
export const sheetRequests = {
  /** Sheets in the folder of the user's own. */
  'sheets.own': asking<readonly OwnSheet[]>()({}),
  'sheets.forms': asking<readonly TableForm[]>()({}),
  /** Begins a sheet: empty under a title, or a copy of one at hand. */
  'sheets.begin': asking<{ readonly name: string }>()({
    title: requiredLine,
    copyOf: z.strictObject({ from: z.enum(['program', 'own']), name: sheetName }).nullable(),
  }),
  'sheets.read': asking<OpenedSheet>()({ name: ownSheetName }),
  /** Keeps a draft, finished or not; refused when it was changed elsewhere since `basis`. */
  'sheets.keep': asking<{ readonly basis: string; readonly readable: boolean; readonly keptAt: string }>()({
    name: ownSheetName,
    draft: sheetDraft,
    basis: z.string().max(100).nullable(),
  }),
  'sheets.putAway': asking<null>()({ name: ownSheetName }),
  /** Checks a draft without keeping it. */
  'sheets.check': asking<SheetCheck>()({ name: ownSheetName.nullable(), draft: sheetDraft }),
  /** The same sheet written the other way; refused while it cannot be read. */
  'sheets.turn': asking<SheetDraft>()({ draft: sheetDraft }),
  /** What a draft concludes from observations of its tells, without a record. */
  'sheets.try': asking<IdentityView>()({
    name: ownSheetName.nullable(),
    draft: sheetDraft,
    observations: z.array(observation).max(200),
    chainsOf: z.array(z.string().max(161)).max(500),
  }),
  /** What taking a sheet would change in the conclusions of the open record; nothing is taken. */
  'sheets.compare': asking<SheetComparison>()({
    source: z.discriminatedUnion('from', [
      ...sheetOrigin.options,
      z.strictObject({ from: z.literal('program'), sheetId: sheetName }),
    ]),
  }),
  /** Tables handed in as a workbook or as CSV, put in the place of those of a draft; nothing is kept. */
  'sheets.bringTables': asking<TablesBrought>()({
    draft: sheetDraft,
    tables: z
      .array(z.strictObject({ table: z.string().max(200), source: photographSource }))
      .min(1)
      .max(40),
  }),
  /** Writes the tables of a draft into a folder of their own: as one workbook (.xlsx), or a CSV file for each. */
  'sheets.carryTables': asking<{ readonly folder: string; readonly files: readonly string[] }>()({
    name: ownSheetName,
    draft: sheetDraft,
    as: z.enum(['one workbook', 'tables as CSV']),
  }),
} as const
