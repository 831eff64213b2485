import { ChoiceField } from '../../../parts-of-page/ChoiceField.tsx'
import type { Entry } from '../../../parts-of-page/useEntry.ts'
import { useRecordStore } from '../../../store/record-store.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { NONE, type TapeEntry } from './tape-entry.ts'

/** The joint of the body whose gap is read, and where along it. */
export function JointField({ entry }: { readonly entry: Entry<TapeEntry> }) {
  const body = useRecordStore((state) => state.record?.particulars.body ?? 'saloon4')
  const names = useRecordStore((state) => state.record?.commission.names ?? 'uk')
  const joints = useAnswer('lists.joints', { body, names }).value ?? []
  const chosen = joints.find(({ id }) => id === entry.draft.jointId)
  return (
    <>
      <ChoiceField
        label="Joint"
        autoFocus
        choices={[NONE, ...joints.map(({ id }) => id)]}
        wordsFor={(id) => joints.find((joint) => joint.id === id)?.name ?? 'not one of the list'}
        {...entry.field('jointId')}
      />
      {chosen === undefined ? null : (
        <p className="note">{`Read at: ${chosen.measureAt.join(', ')}${chosen.bothSides ? '; on the left and on the right' : ''}.`}</p>
      )}
    </>
  )
}
