import { useState } from 'react'
import type { RequestInput } from '../../../shared-types/contract.ts'
import type { OfferedSheet } from '../../../shared-types/identity-view.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { SheetComparison } from '../../../shared-types/sheet-comparison.ts'
import { FileChoice } from '../../parts-of-page/FileChoice.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { ask, problemOf } from '../../store/ask.ts'
import { door } from '../../store/door.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { useAnswer, useChange } from '../../store/use-answer.ts'
import { SheetChange } from './SheetChange.tsx'

/** A sheet to be looked at before it is taken: an upload serves once, so a file is handed in anew each time. */
interface Looked {
  readonly change: SheetComparison
  readonly take: () => Promise<boolean>
}

type Source = RequestInput<'sheets.compare'>['source']

/** Reference sheets that can be taken into the record; nothing is inferred without one. Another edition shows first what it changes. */
export function SheetOffer({
  mayChange,
  follows,
}: {
  readonly mayChange: boolean
  readonly follows: RecordView['sheets']
}) {
  const { value } = useAnswer('sheets.offered', {}, follows)
  const { send, problem, busy } = useChange()
  const [looked, setLooked] = useState<Looked | null>(null)
  const [refused, setRefused] = useState<Problem | null>(null)
  const lookFirst = (compared: () => Promise<Source>, taken: () => Promise<boolean>) => {
    setRefused(null)
    // The button that was pressed is gone then: what the sheet is taken in for comes next, its tells.
    const take = async () => {
      const isTaken = await taken()
      if (isTaken) useScreenStore.setState({ pointed: { kind: 'tells', key: '' } })
      return isTaken
    }
    const run = async () => {
      const change = await ask('sheets.compare', { source: await compared() })
      if (change.editionBefore === null && change.problemAfter === null) await take()
      else setLooked({ change, take })
    }
    run().catch((thrown: unknown) => setRefused(problemOf(thrown)))
  }
  const upload = async (file: File) => ({ from: 'upload', upload: await door().upload(file) }) as const
  const takeFile = (file: File) =>
    lookFirst(
      () => upload(file),
      async () => send('sheet.takeOwn', { source: await upload(file) }),
    )
  const takeOffered = ({ from, name, sheetId }: OfferedSheet) => {
    const own = { from: 'own sheet', name } as const
    lookFirst(
      async () => (from === 'own' ? own : { from: 'program', sheetId }),
      () => (from === 'own' ? send('sheet.takeOwn', { source: own }) : send('sheet.take', { sheetId })),
    )
  }
  return (
    <Section head="Reference sheets" level="column" beside="what could be built, and what tells it">
      <ProblemNote problem={refused ?? problem} />
      {looked === null ? null : (
        <SheetChange
          change={looked.change}
          mayTake={mayChange && !busy}
          onTake={() => {
            setLooked(null)
            void looked.take()
          }}
          onLeave={() => setLooked(null)}
        />
      )}
      <div className="sheet-own">
        <FileChoice
          label="take in a sheet from a file (YAML or JSON)"
          accept=".yaml,.yml,.json"
          disabled={!mayChange || busy}
          onFiles={([file]) => {
            if (file !== undefined) takeFile(file)
          }}
        />
      </div>
      {(value ?? []).map((sheet) => (
        <div key={`${sheet.from} ${sheet.name}`} className="sheet-offer">
          <span>
            <span className="strong">{`${sheet.title}, edition ${sheet.edition}`}</span>
            <span className="under-line">{sheet.from === 'own' ? `your own; ${sheet.about}` : sheet.about}</span>
          </span>
          {sheet.inRecord === 'this one' ? (
            <span className="quiet">in this record</span>
          ) : (
            <button
              type="button"
              className="answer"
              aria-label={`${sheet.inRecord === 'no' ? 'take it in' : 'see what it changes'}: ${sheet.title}`}
              disabled={!mayChange || busy}
              onClick={() => takeOffered(sheet)}
            >
              {sheet.inRecord === 'no' ? 'take it in' : 'see what it changes'}
            </button>
          )}
        </div>
      ))}
    </Section>
  )
}
