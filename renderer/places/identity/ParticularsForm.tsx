import type { Particulars } from '../../../shared-types/car.ts'
import { featureState, withFeature } from '../../../shared-types/car-features.ts'
import { EntrySheet } from '../../parts-of-page/EntrySheet.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useEntry } from '../../parts-of-page/useEntry.ts'
import { change, loadRecord } from '../../store/ask.ts'
import { DimensionFields } from './DimensionFields.tsx'
import { FeatureFields } from './FeatureFields.tsx'
import type { FormOfRecord } from './form-props.ts'
import { FirstParticulars, FurtherParticulars } from './ParticularsFields.tsx'

/** Amends the particulars; the list of panels is loaded anew, because it follows the body and what the car has. */
export function ParticularsForm({ record, focusOn, onLeave }: FormOfRecord) {
  const entry = useEntry<Particulars>({
    name: 'particulars',
    initial: record.particulars,
    focusOn,
    keep: async (particulars) => {
      await change('particulars.set', { particulars })
      await loadRecord()
    },
    kept: onLeave,
  })
  return (
    <EntrySheet title="Amend the particulars" over="as told or as known" entry={entry} onLeave={onLeave}>
      <FirstParticulars field={entry.field} names={record.commission.names} />
      <FurtherParticulars field={entry.field} />
      <Section head="What this car has" beside="decides which panels are walked">
        <FeatureFields
          body={entry.draft.body}
          names={record.commission.names}
          stateOf={({ id }) => featureState(entry.draft.conditions, id)}
          onState={(id, state) => entry.set({ conditions: withFeature(entry.draft.conditions, id, state) })}
        />
      </Section>
      <Section head="Dimensions of this car" beside="the plan follows">
        <DimensionFields
          body={entry.draft.body}
          names={record.commission.names}
          lengthUnit={record.commission.lengthUnit}
          value={entry.draft.dimensions}
          onChange={(dimensions) => entry.set({ dimensions })}
          problem={entry.problem}
        />
      </Section>
    </EntrySheet>
  )
}
