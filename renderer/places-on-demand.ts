import { type ComponentType, useEffect } from 'react'
import { create } from 'zustand'
import { placeCode } from './place-code.ts'
import type { PlaceId } from './store/place-list.ts'
import { useRecordStore } from './store/record-store.ts'

const useLoadedPlaces = create<Partial<Record<PlaceId, ComponentType>>>()(() => ({}))

/** Loads the code of a place once; that it cannot be loaded is said at the head of the page. */
export async function loadPlace(place: PlaceId): Promise<void> {
  if (useLoadedPlaces.getState()[place] !== undefined) return
  try {
    useLoadedPlaces.setState({ [place]: await placeCode[place]() })
  } catch {
    const message =
      'This place could not be loaded, perhaps because the program has ended. Start it again and reload this page. What was confirmed is kept.'
    useRecordStore.setState({ problem: { code: 'internal', message } })
  }
}

/**
 * The component of a place, or null while its code is on the way. Shown the moment it is there: a suspended place would be
 * held back for a third of a second after its empty stand-in was drawn.
 */
export function usePlace(place: PlaceId): ComponentType | null {
  const Place = useLoadedPlaces((loaded) => loaded[place])
  useEffect(() => {
    if (Place === undefined) void loadPlace(place)
  }, [Place, place])
  return Place ?? null
}
