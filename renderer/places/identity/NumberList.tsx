import type { CarNumber } from '../../../shared-types/car.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import type { CarRows } from './car-rows.ts'
import type { Opened } from './IdentitySheet.tsx'
import { NumbersChecked } from './NumbersChecked.tsx'
import { agreementOf } from './number-agreement.ts'

interface NumberListProps {
  readonly record: CarRows
  readonly opened: Opened | null
  /** Null adds a row. */
  readonly onOpen: (key: string | null) => void
}

function AgreementCell({ number }: { readonly number: CarNumber }) {
  const { word, detail } = agreementOf(number)
  return (
    <>
      <span className="strong">{word}</span>
      {detail === '' ? null : <span className="under-line">{detail}</span>}
    </>
  )
}

/** Numbers on paper against numbers as read, compared letter for letter. */
export function NumberList({ record, opened, onOpen }: NumberListProps) {
  const { value: format } = useAnswer('numbers.format', {}, [record.carNumbers, record.particulars])
  return (
    <Section
      head="Numbers"
      level="column"
      beside="compared letter for letter; spaces are ignored"
      action={
        <ActionKey keys="N" label="add" name="Add a number" onAct={() => onOpen(null)} disabled={record.readOnly} />
      }
    >
      <RegisterTable
        label="Numbers"
        rows={record.carNumbers}
        keyOf={(number) => String(number.number)}
        onOpen={(number) => onOpen(String(number.number))}
        chosen={opened?.what === 'carNumber' ? opened.key : null}
        whenEmpty="No number yet. N adds the first: write what the papers say before you read the car."
        columns={[
          { id: 'number', head: 'no.', cell: (number) => <span className="figures">{`N\u202f${number.number}`}</span> },
          {
            id: 'kind',
            head: 'what and where',
            names: true,
            cell: (number) => (
              <>
                <span>{number.kind}</span>
                <span className="under-line">{number.where === '' ? 'place not stated' : number.where}</span>
              </>
            ),
          },
          {
            id: 'onPaper',
            head: 'on paper',
            cell: (number) => (
              <>
                <span className="figures">{number.onPaper === '' ? '–' : number.onPaper}</span>
                <span className="under-line">{number.paper}</span>
              </>
            ),
          },
          {
            id: 'asRead',
            head: 'as read',
            cell: (number) => (
              <>
                <span className="figures">{number.asRead === '' ? '–' : number.asRead}</span>
                <span className="under-line">{number.howRead}</span>
              </>
            ),
          },
          { id: 'agreement', head: 'says', cell: (number) => <AgreementCell number={number} /> },
          {
            id: 'exhibits',
            head: 'exhibits',
            cell: (number) => (
              <span className="reference-row">
                {number.exhibits.length === 0 ? (
                  <span className="quiet">none</span>
                ) : (
                  number.exhibits.map((exhibit) => (
                    <ReferenceLink key={exhibit} reference={{ kind: 'exhibit', key: String(exhibit) }} />
                  ))
                )}
              </span>
            ),
          },
        ]}
      />
      {format === null || record.carNumbers.length === 0 ? null : <NumbersChecked format={format} />}
    </Section>
  )
}
