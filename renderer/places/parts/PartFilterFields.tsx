import { useRef } from 'react'
import { type PartState, partState } from '../../../shared-types/words.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { YesNoField } from '../../parts-of-page/YesNoField.tsx'
import type { PartFilter } from './part-rows.ts'

interface PartFilterFieldsProps {
  readonly filter: PartFilter
  readonly shown: number
  readonly all: number
  readonly onChange: (filter: PartFilter) => void
  readonly onEverything: () => void
}

const states: readonly (PartState | 'any')[] = ['any', ...partState.options]

/** Which parts stand in the list. */
export function PartFilterFields({ filter, shown, all, onChange, onEverything }: PartFilterFieldsProps) {
  const fields = useRef<HTMLDivElement>(null)
  useKeys('Parts', [
    { keys: '/', does: 'look for a part', run: () => fields.current?.querySelector('input')?.focus() },
    {
      keys: 'X',
      does: 'only open parts, or all of them',
      run: () => onChange({ ...filter, onlyOpen: !filter.onlyOpen }),
    },
    { keys: 'A', does: 'show every part', run: onEverything },
  ])
  return (
    <div className="part-filter" ref={fields}>
      <TextField
        label="Look for"
        keyCap={<KeyCap keys="/" />}
        value={filter.text}
        onChange={(text) => onChange({ ...filter, text })}
      />
      <ChoiceField
        label="State"
        choices={states}
        wordsFor={(state) => (state === 'any' ? 'any state' : state)}
        value={filter.state}
        onChange={(state) => onChange({ ...filter, state })}
      />
      <YesNoField
        label="only open: not seen or not determined"
        keyCap={<KeyCap keys="X" />}
        value={filter.onlyOpen}
        onChange={(onlyOpen) => onChange({ ...filter, onlyOpen })}
      />
      <p className="part-filter-count" role="status">
        <span className="figures">{shown}</span> of <span className="figures">{all}</span> shown
        <ActionKey keys="A" label="all" name="Show every part" onAct={onEverything} />
      </p>
    </div>
  )
}
