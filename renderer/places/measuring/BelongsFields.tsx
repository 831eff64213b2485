import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import type { EntryField } from '../../parts-of-page/useEntry.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { wholeCar } from './measured-panel.ts'

interface BelongsFieldsProps {
  /** The panel's id, or the choice that means the whole car. */
  readonly panel: EntryField<string>
  readonly madeBy: EntryField<string>
  readonly caption: EntryField<string>
  readonly captionHint?: string
}

/** What a measurement belongs to as an exhibit: panel, who measured, caption. */
export function BelongsFields({ panel, madeBy, caption, captionHint }: BelongsFieldsProps) {
  const panels = useRecordStore((state) => state.panelList?.panels)
  const nameOf = usePanelNames()
  return (
    <>
      <ChoiceField
        label="Panel"
        choices={[wholeCar, ...(panels ?? []).map(({ id }) => id)]}
        wordsFor={(choice) => (choice === wholeCar ? choice : nameOf(choice))}
        {...panel}
      />
      <TextField label="By" {...madeBy} />
      <NoteField label="Caption" {...(captionHint === undefined ? {} : { hint: captionHint })} {...caption} />
    </>
  )
}
