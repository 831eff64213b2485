import type { Reference } from '../../shared-types/judgement.ts'
import type { EntryPoint } from '../../shared-types/missing-line.ts'
import type { PlaceId } from './place-list.ts'
import { useRecordStore } from './record-store.ts'
import { goToPlace, takeInHand, useScreenStore } from './screen-store.ts'

const placeOf: { readonly [K in EntryPoint['kind']]: PlaceId } = {
  finding: 'walk-round',
  exhibit: 'walk-round',
  panel: 'walk-round',
  spot: 'walk-round',
  gauge: 'coating',
  part: 'parts',
  claim: 'identity',
  carNumber: 'identity',
  commission: 'identity',
  particulars: 'identity',
  visit: 'identity',
  gaugeCheck: 'coating',
  spotReading: 'coating',
  correction: 'putting-right',
}

function panelOf(reference: EntryPoint): string | null {
  const record = useRecordStore.getState().record
  if (reference.kind === 'panel') return reference.key === '' ? null : reference.key
  const number = Number(reference.key)
  if (reference.kind === 'finding') return record?.findings.find((row) => row.number === number)?.panelId ?? null
  if (reference.kind === 'spot') return record?.spots.find((row) => row.number === number)?.panelId ?? null
  if (reference.kind === 'exhibit') return record?.exhibits.find((row) => row.number === number)?.panelId ?? null
  return null
}

/** Goes to where something is entered, with its panel in hand where it has one; the place opens it. */
export function goToEntry(point: EntryPoint): void {
  const panelId = panelOf(point)
  if (panelId !== null) takeInHand(panelId)
  useScreenStore.setState({ pointed: point })
  goToPlace(placeOf[point.kind])
}

/** Goes to where a referenced row stands. */
export const followReference = (reference: Reference): void => goToEntry(reference)
