import { useRef } from 'react'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import type { EntryField } from '../../parts-of-page/useEntry.ts'
import { ImportNote } from '../walk-round/ImportNote.tsx'
import { importPhotographs } from '../walk-round/import-photographs.ts'
import { PhotographChooser } from '../walk-round/PhotographChooser.tsx'

interface TellExhibitsProps {
  /** Panel the tell is looked for on, which new photographs belong to; null where the sheet names none. */
  readonly panelId: string | null
  readonly field: EntryField<number[]>
}

/** What an answer rests on: exhibits of the record, or photographs taken in here and cited at once. */
export function TellExhibits({ panelId, field }: TellExhibitsProps) {
  const chooser = useRef<HTMLInputElement>(null)
  const latest = useRef(field)
  latest.current = field
  const takeIn = async (files: readonly File[]) => {
    const taken = await importPhotographs(files, panelId, null)
    latest.current.onChange([...new Set([...latest.current.value, ...taken])])
  }
  return (
    <>
      <ExhibitPicker label="Exhibits it rests on" panelId={panelId} {...field} />
      <PhotographChooser chooser={chooser} onFiles={(files) => void takeIn(files)} />
      <ActionKey keys="" label="take in photographs" onAct={() => chooser.current?.click()} />
      <ImportNote panelId={panelId} />
    </>
  )
}
