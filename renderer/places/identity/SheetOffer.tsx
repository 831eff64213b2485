import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { door } from '../../store/door.ts'
import { useAnswer, useChange } from '../../store/use-answer.ts'

/** Reference sheets that can be taken into the record; nothing is inferred without one. */
export function SheetOffer({ mayChange, follows }: { readonly mayChange: boolean; readonly follows: number }) {
  const { value } = useAnswer('sheets.offered', {}, follows)
  const { send, problem, busy } = useChange()
  const takeOwn = async (file: File) =>
    send('sheet.takeOwn', { source: { from: 'upload', upload: await door().upload(file) } })
  return (
    <Section head="Reference sheets" level="column" beside="what could be built, and what tells it">
      <ProblemNote problem={problem} />
      <label className="sheet-own">
        Take in a sheet of your own (YAML or JSON){' '}
        <input
          type="file"
          accept=".yaml,.yml,.json"
          disabled={!mayChange || busy}
          onChange={(event) => {
            const [file] = event.target.files ?? []
            event.target.value = ''
            if (file !== undefined) void takeOwn(file)
          }}
        />
      </label>
      {(value ?? []).map(({ sheetId, title, edition, about, inRecord }) => (
        <div key={sheetId} className="sheet-offer">
          <span>
            <span className="strong">{`${title}, edition ${edition}`}</span>
            <span className="under-line">{about}</span>
          </span>
          {inRecord === 'this one' ? (
            <span className="quiet">in this record</span>
          ) : (
            <button
              type="button"
              className="answer"
              disabled={!mayChange || busy}
              onClick={() => void send('sheet.take', { sheetId })}
            >
              {inRecord === 'no' ? 'take it in' : 'take this edition in'}
            </button>
          )}
        </div>
      ))}
    </Section>
  )
}
