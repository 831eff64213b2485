import { format } from 'date-fns'
import { useState } from 'react'
import type { OwnSheet } from '../../../../shared-types/sheet-desk.ts'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { EmptyPlace } from '../../../parts-of-page/EmptyPlace.tsx'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { TextField } from '../../../parts-of-page/TextField.tsx'
import { useKeys } from '../../../parts-of-page/useKeys.ts'
import { ask, problemOf } from '../../../store/ask.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { ShortForm } from '../ShortForm.tsx'
import { SheetDesk } from './SheetDesk.tsx'
import { openSheet, showDesk, useSheetDesk } from './sheet-desk-store.ts'
import './sheets.css'

/** What a new sheet begins from. */
type Beginning = { readonly from: 'program' | 'own'; readonly name: string; readonly title: string } | null

function BeginForm({ copyOf, onLeave }: { readonly copyOf: Beginning; readonly onLeave: () => void }) {
  const [title, setTitle] = useState(copyOf === null ? '' : copyOf.title)
  const [problem, setProblem] = useState<string | null>(null)
  const begin = () => {
    if (title.trim() === '') setProblem('Write which cars the sheet is about; it can be changed later.')
    else
      ask('sheets.begin', {
        title: title.trim(),
        copyOf: copyOf === null ? null : { from: copyOf.from, name: copyOf.name },
      }).then(
        ({ name }) => void openSheet(name),
        (thrown: unknown) => setProblem(problemOf(thrown).message),
      )
  }
  return (
    <ShortForm name="New reference sheet" act="begin" does="begin the sheet" onAct={begin} onLeave={onLeave}>
      <TextField
        label="Car line and years"
        autoFocus
        value={title}
        onChange={setTitle}
        hint={
          copyOf === null
            ? 'begins empty, with a row of an example for every table'
            : `begins as a copy of ${copyOf.title}`
        }
        problem={problem}
      />
    </ShortForm>
  )
}

function SheetRow({
  sheet,
  onCopy,
  onAway,
}: {
  readonly sheet: OwnSheet
  readonly onCopy: () => void
  readonly onAway: () => void
}) {
  const { name, title, edition, state, changedAt, path } = sheet
  return (
    <li className="own-sheet">
      <button type="button" className="record-row" onClick={() => void openSheet(name)}>
        <span className="strong">{title}</span>
        <span>{edition === '' ? '' : `edition ${edition}`}</span>
        <span className="quiet">{`${state}, changed ${format(new Date(changedAt), 'd MMM yyyy, HH:mm')}`}</span>
        <span className="record-path figures">{path}</span>
      </button>
      <ActionKey keys="" label="copy" name={`Begin a copy of ${title}`} onAct={onCopy} />
      <ActionKey keys="" label="put away" name={`Put ${title} away`} onAct={onAway} />
    </li>
  )
}

function SheetList() {
  const own = useAnswer('sheets.own', {})
  const forms = useSheetDesk((state) => state.problem)
  const [beginning, setBeginning] = useState<{ readonly copyOf: Beginning } | null>(null)
  const leave = () => showDesk(false)
  const sedge = () => setBeginning({ copyOf: { from: 'program', name: 'sedge', title: 'Brackwater Sedge' } })
  useKeys('Reference sheets', [
    { keys: 'N', does: 'begin a new sheet', run: () => setBeginning({ copyOf: null }) },
    { keys: 'C', does: 'begin with a copy of the demonstration’s sheet', run: sedge },
    { keys: 'Escape', does: 'back to the records', run: leave },
  ])
  const away = (name: string) => {
    ask('sheets.putAway', { name }).then(own.again, (thrown: unknown) =>
      useSheetDesk.setState({ problem: problemOf(thrown) }),
    )
  }
  const rows = own.value ?? []
  return (
    <div className="own-sheets">
      <Section
        head="Reference sheets of your own"
        level="column"
        beside="what a works could build, what tells it, who says so"
      >
        <ProblemNote problem={own.problem ?? forms} />
        {rows.length === 0 && !own.busy ? (
          <EmptyPlace head="No sheet yet">
            <p>
              A sheet holds what is known of one car line: what could be built, what was never built together, and what
              one can look at to tell. The program reasons over it and names its sources.
            </p>
            <p>Begin with two variables, a rule and a few tells; it is checked while you write.</p>
          </EmptyPlace>
        ) : (
          <ul className="record-rows">
            {rows.map((sheet) => (
              <SheetRow
                key={sheet.name}
                sheet={sheet}
                onCopy={() => setBeginning({ copyOf: { from: 'own', name: sheet.name, title: sheet.title } })}
                onAway={() => away(sheet.name)}
              />
            ))}
          </ul>
        )}
      </Section>
      <div className="place-acts">
        <ActionKey keys="N" label="new sheet" onAct={() => setBeginning({ copyOf: null })} />
        <ActionKey keys="C" label="copy the demonstration’s sheet" onAct={sedge} />
        <ActionKey keys="Escape" label="records" onAct={leave} />
      </div>
      {beginning === null ? null : (
        <BeginForm key={beginning.copyOf?.name ?? ''} copyOf={beginning.copyOf} onLeave={() => setBeginning(null)} />
      )}
    </div>
  )
}

/** Reference sheets of the user's own: their list, or the one on the desk. */
export function OwnSheets() {
  const open = useSheetDesk((state) => state.open)
  const forms = useAnswer('sheets.forms', {})
  if (open === null) return <SheetList />
  if (forms.value === null) return <ProblemNote problem={forms.problem} />
  return <SheetDesk key={open.name} open={open} forms={forms.value} />
}
