import { NumberField } from '../../parts-of-page/NumberField.tsx'
import type { Entry } from '../../parts-of-page/useEntry.ts'
import type { FindingInHand } from './finding-draft.ts'

/** Measured size of what is described; left empty where nothing was measured. */
export function FindingSizes({ entry }: { readonly entry: Entry<FindingInHand> }) {
  return (
    <fieldset className="field-set">
      <legend>Size, where it was measured</legend>
      <div className="field-row">
        <NumberField label="long" quantity="length" {...entry.field('lengthMm')} />
        <NumberField label="wide" quantity="length" {...entry.field('widthMm')} />
        <NumberField label="deep" quantity="length" {...entry.field('depthMm')} />
        <NumberField label="uncertainty, k = 2" quantity="length" {...entry.field('sizeUncertaintyMm')} />
      </div>
    </fieldset>
  )
}
