import type { TellView } from '../../../shared-types/identity-view.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import type { Entry } from '../../parts-of-page/useEntry.ts'
import type { TellDraft } from './tell-draft.ts'

/** A measured value with its uncertainty, for a tell that has a unit. */
export function TellMeasure({ tell, entry }: { readonly tell: TellView; readonly entry: Entry<TellDraft> }) {
  const unit = tell.unit ?? ''
  const says = tell.values.some(({ measure }) => measure !== null)
  return (
    <>
      <div className="tell-measure">
        <NumberField
          label="Measured"
          quantity="measured"
          unit={unit}
          value={entry.draft.measured}
          onChange={(measured) => entry.set({ measured, state: 'measured', value: null })}
          problem={entry.field('measured').problem}
        />
        <NumberField
          label="Uncertainty"
          quantity="measured"
          unit={unit}
          least={0}
          value={entry.draft.uncertainty}
          onChange={(uncertainty) => entry.set({ uncertainty, state: 'measured', value: null })}
          problem={entry.field('uncertainty').problem}
        />
        <ChoiceField label="Stated as" choices={['expanded, k = 2', 'standard, k = 1']} {...entry.field('statedAs')} />
      </div>
      <p className="note">
        {says
          ? 'Each answer above counts by how well its measure fits, its own spread and your uncertainty taken together (JCGM 100:2008, 5.1).'
          : 'The sheet gives no measures for these answers, so a measured value is kept but says nothing yet: choose an answer too.'}
      </p>
    </>
  )
}
