import type { Exhibit } from '../../../../shared-types/exhibit.ts'
import { ChoiceField } from '../../../parts-of-page/ChoiceField.tsx'
import { NumberField } from '../../../parts-of-page/NumberField.tsx'
import { TextField } from '../../../parts-of-page/TextField.tsx'
import type { Entry } from '../../../parts-of-page/useEntry.ts'
import { BelongsFields } from '../BelongsFields.tsx'
import { PlaneFields } from './PlaneFields.tsx'
import { pointsFor } from './picked-points.ts'
import { type PictureEntry, wantedKinds } from './picture-entry.ts'

interface PictureFieldsProps {
  readonly entry: Entry<PictureEntry>
  readonly photographs: readonly Exhibit[]
}

const noneChosen = 'none yet'

/** Letters of a caption that name its photograph among others. */
const MOST_LETTERS = 44

/** A line that names a photograph among others. */
function photographWords({ number, caption, photograph }: Exhibit): string {
  const words = caption === '' ? (photograph?.fileName ?? '') : caption
  return `E\u202f${number} ${words.length > MOST_LETTERS ? `${words.slice(0, MOST_LETTERS - 1)}…` : words}`
}

/** What is told of a measurement on a photograph beside its points. */
export function PictureFields({ entry, photographs }: PictureFieldsProps) {
  const { draft, field, set } = entry
  return (
    <>
      <ChoiceField
        label="Photograph"
        choices={[...(draft.photograph === null ? [noneChosen] : []), ...photographs.map((row) => String(row.number))]}
        wordsFor={(choice) => {
          const found = photographs.find((row) => String(row.number) === choice)
          return found === undefined ? choice : photographWords(found)
        }}
        {...field('photograph')}
        value={draft.photograph === null ? noneChosen : String(draft.photograph)}
        onChange={(choice) => {
          if (choice !== noneChosen) set({ photograph: Number(choice), planePoints: [], measured: [] })
        }}
      />
      <PlaneFields entry={entry} />
      <ChoiceField
        label="To measure"
        choices={wantedKinds}
        {...field('wanted')}
        onChange={(wanted) => set({ wanted, ...pointsFor(draft, { wanted }) })}
      />
      <TextField label="What was measured" required {...field('what')} />
      <div className="field-row">
        <NumberField
          label="Picks good to"
          quantity="plain"
          unit="px"
          least={0.01}
          hint="standard"
          {...field('pickPx')}
        />
        <NumberField
          label="Distortion left"
          quantity="plain"
          unit="px"
          least={0}
          hint="at most, or empty"
          {...field('distortionPx')}
        />
      </div>
      <p className="field-hint">One dot of the picture with the loupe: common practice, no source.</p>
      <div className="field-row">
        <NumberField label="Off the plane by" quantity="length" least={0} {...field('offsetMm')} />
        <NumberField label="Camera was off by" quantity="length" least={0} {...field('cameraMm')} />
      </div>
      <BelongsFields panel={field('panelId')} madeBy={field('madeBy')} caption={field('caption')} />
    </>
  )
}
