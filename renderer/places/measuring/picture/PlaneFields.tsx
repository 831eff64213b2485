import { ChoiceField } from '../../../parts-of-page/ChoiceField.tsx'
import { NumberField } from '../../../parts-of-page/NumberField.tsx'
import type { Entry } from '../../../parts-of-page/useEntry.ts'
import { letterOf, pointsFor } from './picked-points.ts'
import { type PictureEntry, type PlaneKind, planeKinds } from './picture-entry.ts'

const planeWords: { readonly [K in PlaneKind]: string } = {
  rectangle: 'a rectangle with known sides',
  'four points': 'four points with known places',
  'scale bar': 'a scale bar, seen squarely',
  'two pairs of parallels': 'two pairs of parallels, one length',
}

/** Where each of four points lies on the plane. */
function PlaceFields({ entry }: { readonly entry: Entry<PictureEntry> }) {
  const { places } = entry.draft
  const put = (index: number, part: Partial<PictureEntry['places'][number]>) =>
    entry.set({ places: places.map((place, at) => (at === index ? { ...place, ...part } : place)) })
  return places.map((place, index) => (
    <div className="field-row" key={letterOf(index)}>
      <NumberField
        label={`${letterOf(index)} across`}
        quantity="length"
        value={place.xMm}
        onChange={(xMm) => put(index, { xMm })}
      />
      <NumberField
        label={`${letterOf(index)} up or down`}
        quantity="length"
        value={place.yMm}
        onChange={(yMm) => put(index, { yMm })}
      />
    </div>
  ))
}

/** What is known of the plane: how it is told, its sizes, and how exactly they are known. */
export function PlaneFields({ entry }: { readonly entry: Entry<PictureEntry> }) {
  const { draft, field, set } = entry
  const { planeKind } = draft
  const sides = planeKind === 'rectangle'
  const one = planeKind === 'scale bar' || planeKind === 'two pairs of parallels'
  return (
    <>
      <ChoiceField
        label="Plane by"
        choices={planeKinds}
        wordsFor={(kind) => planeWords[kind]}
        {...field('planeKind')}
        onChange={(kind) => set({ planeKind: kind, ...pointsFor(draft, { planeKind: kind }) })}
      />
      {sides ? (
        <div className="field-row">
          <NumberField label="Side A to B" quantity="length" {...field('firstSideMm')} />
          <NumberField label="Side B to C" quantity="length" {...field('secondSideMm')} />
        </div>
      ) : null}
      {planeKind === 'four points' ? <PlaceFields entry={entry} /> : null}
      {one ? <NumberField label="Known length" quantity="length" {...field('knownMm')} /> : null}
      <NumberField
        label="Known to within, k = 2"
        quantity="length"
        least={0}
        hint={planeKind === 'four points' ? 'of each place, each way' : 'of each length'}
        {...field('knownUncertaintyMm')}
      />
      {planeKind === 'two pairs of parallels' ? (
        <NumberField
          label="Focal length"
          quantity="plain"
          unit="px"
          hint="empty where the corners are square"
          {...field('focalLengthPx')}
        />
      ) : null}
    </>
  )
}
