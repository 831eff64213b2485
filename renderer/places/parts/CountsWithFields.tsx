import { useMemo } from 'react'
import type { PartEntry } from '../../../shared-types/part.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useRecordStore } from '../../store/record-store.ts'
import { groupWords } from './part-rows.ts'

const AS_LISTED = 'as listed'
const ALONE = 'alone'

interface CountsWithFieldsProps {
  /** The set the parts list has it in; null for none. */
  readonly listed: string | null
  readonly value: PartEntry['countsWith']
  readonly onChange: (value: PartEntry['countsWith']) => void
  readonly problem: string | null
}

/** Which parts a part is counted with: as listed, alone, or with a set, and why. Parts that came together count once. */
export function CountsWithFields({ listed, value, onChange, problem }: CountsWithFieldsProps) {
  const partList = useRecordStore((state) => state.partList)
  const sets = useMemo(() => [...new Set(partList.flatMap(({ travelsWith }) => travelsWith ?? []))].sort(), [partList])
  const chosen = value === null ? AS_LISTED : (value.set ?? ALONE)
  const choose = (choice: string) => {
    if (choice === AS_LISTED) onChange(null)
    else onChange({ set: choice === ALONE ? null : choice, reason: value?.reason ?? '' })
  }
  return (
    <>
      <ChoiceField
        label="Counts with"
        choices={[AS_LISTED, ALONE, ...sets]}
        wordsFor={(choice) => {
          if (choice === AS_LISTED) return `as listed: ${groupWords(listed ?? 'alone')}`
          return choice === ALONE ? 'nothing: it came by itself' : `the ${groupWords(choice)}`
        }}
        value={chosen}
        onChange={choose}
        problem={value === null ? problem : null}
      />
      {value === null ? null : (
        <TextField
          label="Why it counts so"
          required
          value={value.reason}
          onChange={(reason) => onChange({ ...value, reason })}
          problem={problem}
        />
      )}
    </>
  )
}
