import { readFileSync, writeFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { resourcePath } from '../../../electron/places-on-disk.ts'
import { sheetFormText } from '../../../electron/sheets/reference/sheet-form.ts'

const path = resourcePath('reference-sheets', 'schema.json')

test('the published form is the one the program reads; WITNESSMARK_RENEW_FORM=1 writes it anew', () => {
  if (process.env.WITNESSMARK_RENEW_FORM === '1') writeFileSync(path, sheetFormText())
  expect(readFileSync(path, 'utf8')).toBe(sheetFormText())
})

test('the published form says what must be there and knows every kind of fact', () => {
  const form = JSON.parse(sheetFormText())
  expect(form.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
  expect(form.required).toEqual(['form', 'sheetId', 'title', 'edition'])
  expect(form.additionalProperties).toBe(false)
  expect(Object.keys(form.properties)).toEqual(
    expect.arrayContaining([
      'sources',
      'variables',
      'rules',
      'tells',
      'donors',
      'counts',
      'interchange',
      'numbers',
      'dateCodes',
    ]),
  )
})
