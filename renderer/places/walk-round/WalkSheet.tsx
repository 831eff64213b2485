import type { TellView } from '../../../shared-types/identity-view.ts'
import type { PanelDefinition, PanelList } from '../../../shared-types/panel.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { act } from './act.ts'
import { ExhibitEntry } from './ExhibitEntry.tsx'
import { FindingEntry, useAmendedFinding } from './FindingEntry.tsx'
import { GoTo } from './GoTo.tsx'
import { PanelSheet } from './PanelSheet.tsx'
import { PanelTextEntry } from './PanelTextEntry.tsx'
import { ReadingEntry, useAmendedSpot } from './ReadingEntry.tsx'
import { MetalChoice, PaintChoice } from './StateChoice.tsx'
import { TellEntry } from './TellEntry.tsx'
import { useWalkStore, type WalkState } from './walk-store.ts'
import { stateOfPanel } from './walking.ts'

interface WalkSheetProps {
  readonly record: RecordView
  readonly panelList: PanelList
  readonly panel: PanelDefinition
  readonly onStep: (step: 1 | -1) => void
  readonly onGo: (panelId: string) => void
}

/** The tell whose answer is open. */
const tellInHand = ({ entry, tells }: WalkState): TellView | undefined =>
  entry?.kind === 'tell' ? tells.find(({ key }) => key === entry.tell) : undefined

/** What the sheet at the right shows: the panel in hand, or the entry that is open on it. */
export function WalkSheet({ record, panelList, panel, onStep, onGo }: WalkSheetProps) {
  const entry = useWalkStore((state) => state.entry)
  const marks = useWalkStore((state) => state.handMarks ?? state.marks)
  const finding = useAmendedFinding(record.findings)
  const spot = useAmendedSpot(record.spots)
  const tell = useWalkStore(tellInHand)
  const { names } = record.commission
  const state = stateOfPanel(record.panels, panel.id)
  const about = { panel, state, names }
  switch (entry?.kind) {
    case 'metal':
      return <MetalChoice {...about} />
    case 'paint':
      return <PaintChoice {...about} />
    case 'not accessible':
      return <PanelTextEntry {...about} about="reason" />
    case 'note':
      return <PanelTextEntry {...about} about="note" />
    case 'finding':
      return <FindingEntry key={`${panel.id} ${finding?.number}`} panel={panel} names={names} amended={finding} />
    case 'reading':
      return <ReadingEntry key={`${panel.id} ${spot?.number}`} panel={panel} record={record} amended={spot} />
    case 'exhibit':
      return <ExhibitEntry panel={panel} names={names} />
    case 'tell':
      return tell === undefined ? null : <TellEntry tell={tell} panel={panel} names={names} />
    case 'go to':
      return <GoTo panels={panelList.panels} names={names} onGo={onGo} />
    case undefined:
      return (
        <PanelSheet
          panel={panel}
          count={panelList.panels.length}
          record={record}
          mark={marks?.panels.find((mark) => mark.panelId === panel.id)}
          extents={marks?.extents ?? []}
          onStep={onStep}
          onNothingFound={() => act('panel.nothingFound', { panelId: panel.id })}
        />
      )
  }
}
