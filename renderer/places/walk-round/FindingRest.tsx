import type { PanelDefinition } from '../../../shared-types/panel.ts'
import { findingLayer, howLearned, recommendedAction } from '../../../shared-types/words.ts'
import { ExhibitPicker } from '../../parts-of-page/ExhibitPicker.tsx'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import { KeyChoice } from '../../parts-of-page/KeyChoice.tsx'
import { NoteField, TextField } from '../../parts-of-page/TextField.tsx'
import type { Entry } from '../../parts-of-page/useEntry.ts'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'
import { ExtentPad } from './ExtentPad.tsx'
import { FindingSizes } from './FindingSizes.tsx'
import type { FindingInHand } from './finding-draft.ts'
import { GradeFields } from './GradeFields.tsx'
import { byFigure } from './keyed-words.ts'

const actionKeys = byFigure(recommendedAction.options)
const learnedKeys = byFigure(howLearned.options)
const layerKeys = byFigure(findingLayer.options)

interface FindingRestProps {
  readonly panel: PanelDefinition
  readonly entry: Entry<FindingInHand>
  readonly choose: (part: Partial<FindingInHand>, byKey: boolean, next: string) => void
}

/** The fields of a finding that have a default; drawn once the first ones are on screen. */
export function FindingRest({ panel, entry, choose }: FindingRestProps) {
  const { draft, set } = entry
  return (
    <>
      <div id="finding-extent">
        <ExtentPad
          panelId={panel.id}
          extent={draft.extent}
          onChange={(extent) => set({ extent })}
          problem={entry.field('extent').problem}
        />
      </div>
      <KeyChoice
        id="finding-action"
        label="Recommended action"
        keys="A"
        choices={actionKeys}
        value={draft.action}
        onChoose={(value, byKey) => choose({ action: value }, byKey, 'finding-note')}
        layout="columns"
      />
      <KeyChoice
        id="finding-layer"
        label="Layer"
        keys="L"
        choices={layerKeys}
        value={draft.layer}
        onChoose={(value, byKey) => choose({ layer: value }, byKey, 'finding-note')}
        layout="line"
      />
      <KeyChoice
        id="finding-learned"
        label="How it was learned"
        keys="H"
        choices={learnedKeys}
        value={draft.learned}
        onChoose={(value, byKey) => choose({ learned: value }, byKey, 'finding-note')}
        layout="line"
      />
      {draft.learned === 'told' || draft.learned === 'inferred' ? (
        <TextField label="Told by whom, or inferred from what" {...entry.field('learnedFrom')} />
      ) : null}
      <FindingSizes entry={entry} />
      <GradeFields kind={draft.kind} grade={draft.grade} onChange={(grade) => set({ grade })} />
      <NoteField label="Suspected cause, apart from what was observed" rows={1} {...entry.field('suspectedCause')} />
      <YesNoField
        label="Dangerous: tell the owner at once"
        {...entry.field('dangerous')}
        keyCap={<KeyCap keys="D" />}
      />
      <ExhibitPicker label="Shown by exhibits" {...entry.field('exhibits')} panelId={panel.id} />
    </>
  )
}
