import { useEffect, useMemo, useRef, useState } from 'react'
import { conditionsOf } from '../../../shared-types/car-features.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { bindPart } from '../../parts-of-page/bind-part.ts'
import { KeyChoice } from '../../parts-of-page/KeyChoice.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { useFaultyFirst } from '../../parts-of-page/useFaultyFirst.ts'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { ask, change, loadRecord } from '../../store/ask.ts'
import { goToPlace } from '../../store/screen-store.ts'
import { ExaminerFields, PurposeFields, ShownAsFields } from '../identity/CommissionFields.tsx'
import { DimensionFields } from '../identity/DimensionFields.tsx'
import { FeatureFields } from '../identity/FeatureFields.tsx'
import { FirstParticulars } from '../identity/ParticularsFields.tsx'
import { FirstVisitFields } from '../identity/VisitFields.tsx'
import { rememberedHabits, rememberHabits } from './examiner-habits.ts'
import { levelWords } from './inspection-levels.ts'
import { LeaveFields } from './LeaveFields.tsx'
import { consentsOf, fileNameOf, type NewRecord, newRecord } from './new-record.ts'

const levelKeys = ['O', 'P', 'I', 'U'] as const

/** Nothing is chosen for the examiner: the form goes on only after the level of inspection was. */
type Draft = NewRecord & { readonly levelChosen: boolean }

function refuseUnlessTold(form: NewRecord): void {
  if (form.particulars.title.trim() === '') {
    throw new ProblemError('input-refused', 'Write a title for the car; it can be changed later.', {
      field: 'particulars.title',
    })
  }
  if (form.commission.examiner.trim() === '') {
    throw new ProblemError('input-refused', 'Write who examines; the report bears this name.', {
      field: 'commission.examiner',
    })
  }
}

async function begin(form: NewRecord): Promise<void> {
  refuseUnlessTold(form)
  const { commission, visit } = form
  const features = await ask('lists.features', { body: form.particulars.body })
  const particulars = { ...form.particulars, conditions: conditionsOf(features, form.features) }
  await ask('records.create', { fileName: fileNameOf(form), particulars, commission, visit })
  await loadRecord()
  rememberHabits(commission)
  for (const consent of consentsOf(form)) await change('consent.set', { consent })
}

/** The beginning of the job: the level of inspection first, then the car, the commission, the visit and the owner's leave. */
export function NewRecordForm({ onLeave }: { readonly onLeave: () => void }) {
  const initial = useMemo<Draft>(
    () => ({ ...newRecord('with inside', new Date(), rememberedHabits()), levelChosen: false }),
    [],
  )
  const entry = useEntry<Draft>({
    name: 'record.new',
    ofNoRecord: true,
    initial,
    keep: begin,
    kept: () => goToPlace('identity'),
  })
  const { draft } = entry
  const form = useRef<HTMLFormElement>(null)
  const unlessFaulty = useFaultyFirst(form)
  const keep = () => unlessFaulty(() => void entry.keep())
  const [goOn, setGoOn] = useState(0)
  useEffect(() => {
    if (goOn > 0) form.current?.querySelector<HTMLElement>('.new-record-columns input')?.focus()
  }, [goOn])
  useKeys('New record', [
    { keys: 'Ctrl+Enter', does: 'begin the record', run: keep, whileTyping: true },
    { keys: 'Escape', does: 'leave; what was typed stays', run: onLeave, whileTyping: true },
  ])
  return (
    <form
      ref={form}
      className="new-record"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        keep()
      }}
    >
      <Section
        head="1 How far the inspection goes"
        level="column"
        beside="chosen before looking, printed in the report"
      >
        <KeyChoice
          label="Level of inspection"
          labelShown={false}
          layout="columns"
          autoFocus
          choices={levelWords.map((words, place) => ({
            choice: words.level,
            keys: levelKeys[place] ?? '',
            words: words.name,
            means: `${words.includes} ${words.leavesOut}`,
          }))}
          value={draft.levelChosen ? draft.commission.level : null}
          onChoose={(level, byKey) => {
            entry.set({ levelChosen: true, commission: { ...draft.commission, level } })
            if (byKey) setGoOn((times) => times + 1)
          }}
        />
      </Section>
      {draft.levelChosen ? (
        <>
          <div className="new-record-columns">
            <Section head="2 The car" level="column">
              <FirstParticulars field={bindPart(entry, 'particulars')} names={draft.commission.names} />
              <ShownAsFields field={bindPart(entry, 'commission')} />
            </Section>
            <Section head="3 Who examines" level="column">
              <ExaminerFields field={bindPart(entry, 'commission')} />
            </Section>
            <Section head="4 For whom, what for" level="column">
              <PurposeFields field={bindPart(entry, 'commission')} />
            </Section>
            <Section head="5 Where it stands" level="column">
              <FirstVisitFields field={bindPart(entry, 'visit')} />
            </Section>
          </div>
          <Section
            head="6 What this car has"
            level="column"
            beside="decides which panels are walked; set as cars of this body usually are"
          >
            <FeatureFields
              body={draft.particulars.body}
              names={draft.commission.names}
              stateOf={({ id, usually }) => draft.features[id] ?? usually}
              onState={(id, state) => entry.set({ features: { ...draft.features, [id]: state } })}
            />
          </Section>
          <Section head="7 Dimensions of this car" level="column" beside="where somebody measured it; the plan follows">
            <DimensionFields
              body={draft.particulars.body}
              names={draft.commission.names}
              lengthUnit={draft.commission.lengthUnit}
              value={draft.particulars.dimensions}
              onChange={(dimensions) => entry.set({ particulars: { ...draft.particulars, dimensions } })}
              problem={entry.problem}
            />
          </Section>
          <Section
            head="8 The owner’s leave"
            level="column"
            beside="what is not ticked is not given; written leave is best"
          >
            <TextField
              label="Given by"
              value={draft.leaveBy}
              onChange={(leaveBy) => entry.set({ leaveBy })}
              hint="name of the owner or of who may speak for them"
            />
            <LeaveFields given={draft.leave} onChange={(leave) => entry.set({ leave })} />
          </Section>
          <p className="note">
            Only the title and who examines are required. Everything can be amended later in Identity, and each
            amendment is kept in the journal. File: <span className="figures">{fileNameOf(draft)}</span>
          </p>
        </>
      ) : (
        <p className="note">Choose a level to go on. It can be amended later, and then both stand in the journal.</p>
      )}
      <ProblemNote problem={entry.problem} />
      <div className="sheet-acts">
        {draft.levelChosen ? (
          <ActionKey keys="Ctrl+Enter" label={entry.busy ? 'beginning' : 'begin the record'} onAct={keep} />
        ) : null}
        <ActionKey keys="Escape" label="leave" onAct={onLeave} />
        {entry.begun ? <ActionKey keys="" label="start over" onAct={entry.startOver} /> : null}
      </div>
    </form>
  )
}
