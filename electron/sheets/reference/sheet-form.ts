import { z } from 'zod'
import { referenceSheet, SHEET_FORM } from '../../../shared-types/reference-sheet.ts'

/** The published form of reference sheets as JSON Schema, draft 2020-12; it is what `resources/reference-sheets/schema.json` holds. */
export function sheetFormText(): string {
  const schema = {
    title: `Reference sheet, form ${SHEET_FORM}`,
    description:
      'Facts about a car line or an era, written as YAML or JSON. Everything with a default may be left out.',
    ...z.toJSONSchema(referenceSheet, { io: 'input' }),
  }
  return `${JSON.stringify(schema, null, 1)}\n`
}
