import { useMemo } from 'react'
import { type PanelDefinition, type PanelState, panelName } from '../../../shared-types/panel.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { NameChoice } from '../../../shared-types/words.ts'
import { EditSheet } from '../../parts-of-page/EditSheet.tsx'
import { NoteField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { leaveEntry } from './walk-store.ts'

interface PanelTextEntryProps {
  readonly panel: PanelDefinition
  readonly state: PanelState
  readonly names: NameChoice
  /** Why the panel could not be reached, or a note on it. */
  readonly about: 'reason' | 'note'
}

/** One text about the panel in hand: why it was not accessible, or a note. Enter keeps. */
export function PanelTextEntry({ panel, state, names, about }: PanelTextEntryProps) {
  const stored = about === 'reason' ? state.reason : state.note
  const entry = useEntry<{ readonly reason: string; readonly note: string }>({
    name: `panel.${about} ${panel.id}`,
    initial: useMemo(() => ({ reason: stored, note: stored }), [stored]),
    keep: async ({ reason, note }) => {
      if (about === 'reason' && reason.trim() === '') {
        throw new ProblemError('input-refused', 'Say in a few words why the panel could not be reached.', {
          field: about,
        })
      }
      return about === 'reason'
        ? change('panel.notAccessible', { panelId: panel.id, reason })
        : change('panel.note', { panelId: panel.id, note })
    },
    kept: leaveEntry,
  })
  return (
    <EditSheet
      title={about === 'reason' ? 'Not accessible' : 'Note'}
      over={
        <span>
          {panel.stop}, {panelName(panel, names)}
        </span>
      }
      onKeep={() => void entry.keep()}
      onLeave={leaveEntry}
      problem={entry.problemOfAll}
      busy={entry.busy}
      onStartOver={entry.begun ? entry.startOver : undefined}
    >
      <NoteField
        label={about === 'reason' ? 'Why it could not be reached' : 'Note on the panel'}
        hint="Enter keeps, Shift Enter begins a line"
        rows={4}
        autoFocus
        {...entry.field(about)}
        onEnter={() => void entry.keep()}
      />
      {about === 'reason' ? (
        <p className="note">
          Not accessible is neither good nor bad: the panel stays open, and every share of the judgement widens by its
          area.
        </p>
      ) : null}
    </EditSheet>
  )
}
