import type { SheetCheck, SheetMessage } from '../../../../shared-types/sheet-desk.ts'
import { Section } from '../../../parts-of-page/Section.tsx'

const SHOWN = 60

/** Where a message is about, in words. */
export const placeWords = ({ table, row, column, line }: SheetMessage): string =>
  table === null
    ? line === null
      ? 'the sheet'
      : `line ${line}`
    : [table, row === null ? '' : `row ${row + 1}`, column ?? ''].filter((words) => words !== '').join(', ')

/** Errors first: they keep the sheet from being used. */
export const inOrderOfWeight = (messages: readonly SheetMessage[]): readonly SheetMessage[] =>
  messages.toSorted((one, other) => Number(one.severity === 'warning') - Number(other.severity === 'warning'))

function standing(check: SheetCheck | null): string {
  if (check === null) return 'being checked'
  const errors = check.messages.filter(({ severity }) => severity === 'error').length
  const doubts = check.messages.length - errors
  const words = [errors === 0 ? '' : `${errors} wrong`, doubts === 0 ? '' : `${doubts} doubtful`].filter(
    (each) => each !== '',
  )
  return words.length === 0 ? 'nothing wrong; it can be used' : words.join(', ')
}

/** What the checker says, each line a way to the cell it is about. */
export function MessageList(props: {
  readonly check: SheetCheck | null
  readonly checking: boolean
  readonly onGo: (message: SheetMessage) => void
}) {
  const { check, checking } = props
  const messages = inOrderOfWeight(check?.messages ?? [])
  return (
    <Section head="Checked" level="column" beside={<span role="status">{standing(check)}</span>}>
      <ul className="sheet-messages" data-checking={checking || undefined}>
        {messages.slice(0, SHOWN).map((message) => {
          const place = placeWords(message)
          return (
            <li key={`${place} ${message.what}`}>
              <button type="button" className="sheet-message" onClick={() => props.onGo(message)}>
                <span className="figures">{message.severity === 'error' ? '!' : '?'}</span>
                <span>
                  <span className="quiet">{`${message.severity === 'error' ? 'wrong' : 'doubtful'} · ${place}`}</span>
                  <span className="under-line strong">{message.what}</span>
                  <span className="under-line">{message.cure}</span>
                </span>
              </button>
            </li>
          )
        })}
      </ul>
      {messages.length > SHOWN ? <p className="note">{`And ${messages.length - SHOWN} more.`}</p> : null}
    </Section>
  )
}
