import { startTransition, useEffect, useMemo, useRef, useState } from 'react'
import type { Finding } from '../../../shared-types/finding.ts'
import { type PanelDefinition, panelName } from '../../../shared-types/panel.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { type FindingKind, type NameChoice, severity, urgency } from '../../../shared-types/words.ts'
import { CautionLines } from '../../parts-of-page/CautionLines.tsx'
import { EditSheet } from '../../parts-of-page/EditSheet.tsx'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import { KeyChoice } from '../../parts-of-page/KeyChoice.tsx'
import { NoteField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { change } from '../../store/ask.ts'
import { FindingRest } from './FindingRest.tsx'
import { extentStands, type FindingInHand, newFinding, usualLayer } from './finding-draft.ts'
import { byFigure, findingKeys } from './keyed-words.ts'
import { leaveEntry, useWalkStore } from './walk-store.ts'

/** What a key that goes to a group goes to: the answer that stands, and where there is none the first that takes a key. */
const STARTS_OF_GROUP = ['[data-first]', '[tabindex="0"], input, textarea, svg'] as const

const severityKeys = byFigure(severity.options)
const urgencyKeys = byFigure(urgency.options)

interface FindingEntryProps {
  readonly panel: PanelDefinition
  readonly names: NameChoice
  /** The finding that is amended; null for a new one. */
  readonly amended: Finding | null
}

function sent(finding: FindingInHand): Omit<Finding, 'number'> {
  const { kind, ...rest } = finding
  if (kind === null) throw new ProblemError('input-refused', 'Choose the kind of finding first.', { field: 'kind' })
  if (finding.extent !== null && !extentStands(finding.extent)) {
    const wanted = finding.extent.shape === 'area' ? 'three points' : 'two points'
    throw new ProblemError('input-refused', `The extent needs ${wanted}; set more, or clear it.`, { field: 'extent' })
  }
  return { ...rest, kind }
}

/** A finding, entered by keys: kind letter, severity figure, urgency figure, note, Enter. Everything else has a default. */
export function FindingEntry({ panel, names, amended }: FindingEntryProps) {
  const form = useRef<HTMLDivElement>(null)
  const initial = useMemo((): FindingInHand => amended ?? newFinding(panel.id), [amended, panel.id])
  const entry = useEntry<FindingInHand>({
    name: amended === null ? `finding.add ${panel.id}` : `finding.amend ${amended.number}`,
    initial,
    keep: (finding) => {
      if (amended === null) return change('finding.add', { draft: sent(finding) })
      const { number, ...draft } = { ...sent(finding), number: amended.number }
      return change('finding.amend', { number, draft })
    },
    kept: () => {
      leaveEntry()
    },
  })
  const { draft, set } = entry
  const goTo = (id: string) => {
    const group = form.current?.querySelector<HTMLElement>(`#${id}`)
    const first = STARTS_OF_GROUP.map((start) => group?.querySelector<HTMLElement>(start)).find(
      (found) => found != null,
    )
    const wanted = group?.matches('input,textarea,button') ? group : first
    wanted?.focus()
  }
  const choose = (part: Partial<FindingInHand>, byKey: boolean, next: string) => {
    set(part)
    if (byKey) goTo(next)
  }
  // Whoever comes back to a note that was being written goes on in it.
  const [startAt] = useState(
    entry.begun && draft.note !== '' ? 'finding-note' : draft.kind === null ? 'finding-kind' : 'finding-severity',
  )
  useEffect(() => {
    const group = form.current?.querySelector(`#${startAt}`)
    const wanted = group?.querySelector<HTMLElement>('[data-first], textarea')
    wanted?.focus()
    if (wanted instanceof HTMLTextAreaElement) wanted.setSelectionRange(wanted.value.length, wanted.value.length)
  }, [startAt])
  const [restShown, setRestShown] = useState(false)
  useEffect(() => startTransition(() => setRestShown(true)), [])
  useKeys('Finding', [
    { keys: 'K', does: 'to the kind', run: () => goTo('finding-kind') },
    { keys: 'S', does: 'to severity', run: () => goTo('finding-severity') },
    { keys: 'U', does: 'to urgency', run: () => goTo('finding-urgency') },
    { keys: 'A', does: 'to the recommended action', run: () => goTo('finding-action') },
    { keys: 'L', does: 'to the layer', run: () => goTo('finding-layer') },
    { keys: 'H', does: 'to how it was learned', run: () => goTo('finding-learned') },
    { keys: 'X', does: 'to the extent on the outline', run: () => goTo('finding-extent') },
    { keys: 'N', does: 'to the note', run: () => goTo('finding-note') },
    { keys: 'D', does: 'dangerous, or not', run: () => set({ dangerous: !draft.dangerous }) },
  ])
  const raises = draft.kind === 'filler' || draft.kind === 'corrosion' || draft.kind === 'perforation'
  return (
    <EditSheet
      title={amended === null ? 'A finding' : `Finding F\u202f${amended.number}`}
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
      {...(amended === null
        ? {}
        : {
            onWithdraw: () => {
              void change('finding.withdraw', { number: amended.number }).then(leaveEntry)
            },
          })}
    >
      <div ref={form} className="finding-form">
        <KeyChoice<FindingKind>
          id="finding-kind"
          label="Kind"
          choices={findingKeys}
          value={draft.kind}
          onChoose={(kind, byKey) => choose({ kind, layer: usualLayer(kind) }, byKey, 'finding-severity')}
          layout="columns"
        />
        {entry.field('kind').problem === null ? null : <p className="field-problem">{entry.field('kind').problem}</p>}
        <KeyChoice
          id="finding-severity"
          label="Severity of the material"
          keys="S"
          choices={severityKeys}
          value={draft.severity}
          onChoose={(value, byKey) => choose({ severity: value }, byKey, 'finding-urgency')}
          layout="line"
        />
        <KeyChoice
          id="finding-urgency"
          label="Urgency of the measure"
          keys="U"
          choices={urgencyKeys}
          value={draft.urgency}
          onChoose={(value, byKey) => choose({ urgency: value }, byKey, 'finding-note')}
          layout="line"
        />
        <div id="finding-note">
          <NoteField
            label="Note; Enter keeps, Shift Enter begins a line"
            {...entry.field('note')}
            keyCap={<KeyCap keys="N" />}
            onEnter={() => form.current?.closest('form')?.requestSubmit()}
          />
        </div>
        {restShown ? <FindingRest panel={panel} entry={entry} choose={choose} /> : null}
      </div>
      <CautionLines of={panel.cautions} steps={raises ? ['sanding or cutting'] : []} />
    </EditSheet>
  )
}

/** The finding an entry amends, or null. */
export function useAmendedFinding(findings: readonly Finding[]): Finding | null {
  const entry = useWalkStore((state) => state.entry)
  if (entry?.kind !== 'finding' || entry.amends === null) return null
  return findings.find((finding) => finding.number === entry.amends) ?? null
}
