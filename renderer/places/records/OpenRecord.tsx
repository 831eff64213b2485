import type { RecordView } from '../../../shared-types/record.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { bodyWords } from '../identity/body-words.ts'
import type { RecordActs } from './record-acts.ts'

/** What is open now, how much stands in it, and what can be done to the file as a whole. */
export function OpenRecord({ record, acts }: { readonly record: RecordView; readonly acts: RecordActs }) {
  const walked = useRecordStore((state) => state.panelList?.panels.filter((panel) => panel.walked).length ?? 0)
  useKeys('The open record', [
    { keys: 'B', does: 'make a copy to keep elsewhere', run: acts.backup },
    { keys: 'V', does: 'check that the journal is whole', run: acts.verify },
    { keys: 'C', does: 'close the record', run: acts.close },
  ])
  const inspected = record.panels.filter((panel) => panel.inspection === 'inspected').length
  const lines: readonly (readonly [string, string])[] = [
    ['Record', record.commission.recordNumber],
    ['Body', bodyWords(record.particulars.body, record.commission.names)],
    ['Level', record.commission.level],
    ['Panels inspected', `${inspected} of ${walked}`],
    ['Findings', String(record.findings.length)],
    ['Exhibits', String(record.exhibits.length)],
    ['Editions issued', String(record.editions.length)],
    ['Journal entries', String(record.journalNumber)],
    ['Kept', record.readOnly ? 'for reading only: nothing can be changed' : 'each change as it is made'],
  ]
  return (
    <Section head="Open now" level="column">
      <dl className="said-list">
        {lines.map(([name, said]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{said}</dd>
          </div>
        ))}
      </dl>
      <p className="record-path figures">{record.path}</p>
      <div className="place-acts">
        <ActionKey keys="B" label="copy" name="Make a copy to keep elsewhere" onAct={acts.backup} />
        <ActionKey keys="V" label="check" name="Check that the journal is whole" onAct={acts.verify} />
        <ActionKey keys="C" label="close" name="Close the record" onAct={acts.close} />
      </div>
    </Section>
  )
}
