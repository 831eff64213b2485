import { useEffect, useRef } from 'react'
import type { TellView } from '../../../shared-types/identity-view.ts'
import { NoteField } from '../../parts-of-page/TextField.tsx'
import type { Entry } from '../../parts-of-page/useEntry.ts'
import { TellExhibits } from './TellExhibits.tsx'
import { TellMeasure } from './TellMeasure.tsx'
import { TellSure } from './TellSure.tsx'
import type { TellDraft } from './tell-draft.ts'

/** What is being said beside the answer itself. */
export type MoreOpen = 'sure' | 'measure' | 'exhibits' | 'note' | 'cannot be seen' | 'disturbed'

const noteLabels = {
  note: 'Note',
  'cannot be seen': 'Why it cannot be seen; Enter keeps',
  disturbed: 'What disturbed it, if you can tell; Enter keeps',
} as const

interface TellMoreProps {
  readonly tell: TellView
  readonly entry: Entry<TellDraft>
  readonly open: MoreOpen
  /** Done here: keeps where there is an answer, else goes back to the answers. */
  readonly onDone: () => void
}

function Form({ tell, entry, open, onDone }: TellMoreProps) {
  if (open === 'sure')
    return (
      <TellSure
        surePercent={entry.draft.surePercent}
        problem={entry.field('surePercent').problem}
        onSure={(surePercent) => entry.set({ surePercent })}
        onDone={onDone}
      />
    )
  if (open === 'measure') return <TellMeasure tell={tell} entry={entry} />
  if (open === 'exhibits') return <TellExhibits panelId={tell.panels[0] ?? null} field={entry.field('exhibits')} />
  return <NoteField label={noteLabels[open]} onEnter={onDone} {...entry.field('note')} />
}

/** The form under the answers: how sure, a measured value, exhibits, a note, the reason. It takes the focus when it opens. */
export function TellMore(props: TellMoreProps) {
  const { open } = props
  const form = useRef<HTMLDivElement>(null)
  const asked = useRef<MoreOpen | null>(null)
  useEffect(() => {
    if (asked.current === open) return
    asked.current = open
    form.current?.querySelector<HTMLElement>('input:checked, input:not([type=file]), textarea')?.focus()
  }, [open])
  return (
    <div ref={form} className="tell-form">
      <Form key={open} {...props} />
    </div>
  )
}
