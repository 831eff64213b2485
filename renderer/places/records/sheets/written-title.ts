import type { SheetDraft, TableForm } from '../../../../shared-types/sheet-desk.ts'

/** The title as it is written in a draft, also in one that is no sheet yet; empty where there is none. */
export function writtenTitle(draft: SheetDraft, forms: readonly TableForm[]): string {
  if (draft.written === 'as text') {
    const written = /^title:[ \t]*(.*)$/mu.exec(draft.text)?.[1]?.trim() ?? ''
    return /^(["'])(.*)\1$/u.exec(written)?.[2] ?? written
  }
  const column = forms.find(({ name }) => name === 'sheet')?.columns.findIndex(({ heading }) => heading === 'title')
  return draft.tables.sheet?.[0]?.[column ?? -1]?.trim() ?? ''
}
