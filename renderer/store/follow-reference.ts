import type { Reference } from '../../shared-types/judgement.ts'
import type { PlaceId } from './place-list.ts'
import { useRecordStore } from './record-store.ts'
import { goToPlace, takeInHand, useScreenStore } from './screen-store.ts'

const placeOf: { readonly [K in Reference['kind']]: PlaceId } = {
  finding: 'walk-round',
  exhibit: 'walk-round',
  panel: 'walk-round',
  spot: 'walk-round',
  gauge: 'coating',
  part: 'parts',
  claim: 'identity',
  carNumber: 'identity',
  correction: 'putting-right',
}

function panelOf(reference: Reference): string | null {
  const record = useRecordStore.getState().record
  if (reference.kind === 'panel') return reference.key
  const number = Number(reference.key)
  if (reference.kind === 'finding') return record?.findings.find((row) => row.number === number)?.panelId ?? null
  if (reference.kind === 'spot') return record?.spots.find((row) => row.number === number)?.panelId ?? null
  if (reference.kind === 'exhibit') return record?.exhibits.find((row) => row.number === number)?.panelId ?? null
  return null
}

/** Goes to where a referenced row stands, with its panel in hand where it has one. */
export function followReference(reference: Reference): void {
  const panelId = panelOf(reference)
  if (panelId !== null) takeInHand(panelId)
  useScreenStore.setState({ pointed: { kind: reference.kind, key: reference.key } })
  goToPlace(placeOf[reference.kind])
}
