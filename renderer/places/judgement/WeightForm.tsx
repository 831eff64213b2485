import { useState } from 'react'
import { type OwnWeight, type WeighedSort, weighedSort, weighedThing } from '../../../shared-types/own-weight.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change } from '../../store/ask.ts'
import { useAnswer } from '../../store/use-answer.ts'

interface WeightDraft {
  readonly weighs: string
  readonly factor: number | null
  readonly reason: string
}

/** Sets how many times an area, a layer, a panel, a group of parts or a part counts, or takes the weight away again. */
export function WeightForm(props: {
  readonly row: OwnWeight | null
  /** Changes when the record does. */
  readonly follows: number
  readonly onLeave: () => void
}) {
  const { row, onLeave } = props
  const { value: things } = useAnswer('judgement.weighable', {}, props.follows)
  const [sort, setSort] = useState<WeighedSort>(row === null ? 'body area' : weighedThing(row.weighs).sort)
  const entry = useEntry<WeightDraft>({
    name: `weight.set ${row?.weighs ?? ''}`,
    initial: { weighs: row?.weighs ?? '', factor: row?.factor ?? null, reason: row?.reason ?? '' },
    keep: async ({ weighs, factor, reason }) => {
      if (weighs === '')
        throw new ProblemError('input-refused', 'Choose what this weight is for.', { field: 'draft.weighs' })
      if (factor === null) {
        const message = 'Type how many times it counts, such as 2 or 0.5.'
        throw new ProblemError('input-refused', message, { field: 'draft.factor' })
      }
      await change('weight.set', { draft: { weighs, factor, reason } })
    },
    kept: onLeave,
  })
  const { field } = entry
  const listed = (things ?? []).filter((thing) => thing.sort === sort)
  return (
    <EntrySheet
      title={row === null ? 'A weight' : 'Weight'}
      over="how many times it counts in the shares; the areas stay as they are"
      entry={entry}
      onLeave={onLeave}
      withdraw={row === null ? null : { by: 'weight.withdraw', weighs: row.weighs }}
    >
      <ChoiceField
        label="What sort of thing"
        autoFocus={row === null}
        disabled={row !== null}
        choices={weighedSort.options}
        value={sort}
        onChange={(next) => {
          setSort(next)
          entry.set({ weighs: '' })
        }}
      />
      <ChoiceField
        label="Which"
        disabled={row !== null}
        choices={listed.map(({ weighs }) => weighs)}
        wordsFor={(weighs) => listed.find((thing) => thing.weighs === weighs)?.label ?? weighs}
        {...field('weighs')}
      />
      <NumberField
        label="Weight"
        quantity="plain"
        unit="times"
        least={0}
        most={1000}
        autoFocus={row !== null}
        hint="1 is its area, or one part; 0 leaves it out; 2 makes it count twice"
        {...field('factor')}
      />
      <TextField label="Why" hint="printed in the report with your name and the day" {...field('reason')} />
    </EntrySheet>
  )
}
