import { expect, it } from 'vitest'
import { tableForms } from '../../electron/sheets/reference/table-forms.ts'
import { writtenTitle } from '../../renderer/places/records/sheets/written-title.ts'

const forms = tableForms()
const headings = forms.find(({ name }) => name === 'sheet')?.columns.map(({ heading }) => heading) ?? []

it('a sheet that is not one yet bears the title written in it, as tables and as text', () => {
  const cells = headings.map((heading) => (heading === 'title' ? ' Marsh, 1951 to 1956 ' : ''))
  expect(writtenTitle({ written: 'as tables', tables: { sheet: [cells] } }, forms)).toBe('Marsh, 1951 to 1956')
  const text = 'form: 1\nsources:\n  - title: A ledger\ntitle: "Marsh: the first"\nrules: [\n'
  expect(writtenTitle({ written: 'as text', text }, forms)).toBe('Marsh: the first')
})

it('no title is none', () => {
  expect(writtenTitle({ written: 'as tables', tables: {} }, forms)).toBe('')
  expect(writtenTitle({ written: 'as text', text: 'sources:\n  - title: A ledger\n' }, forms)).toBe('')
  expect(writtenTitle({ written: 'as text', text: 'title:\nedition: 1\n' }, forms)).toBe('')
})
