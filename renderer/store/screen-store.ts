import { create } from 'zustand'
import type { SheetName } from '../../shared-types/tokens.ts'
import type { PlaceId } from './place-list.ts'
import { keepSheet, placeAtStart, sheetAtStart, sheetNames } from './start-of-page.ts'

/** A row that a reference points at: finding 3, exhibit 12; or an entry, and the field of it. */
export interface Pointed {
  readonly kind: string
  readonly key: string
  readonly field?: string
}

/** What is on screen; nothing of this belongs to the record. */
export interface ScreenState {
  readonly place: PlaceId
  /** Panel in hand; null before the walk has begun. */
  readonly inHand: string | null
  readonly sheetName: SheetName
  readonly keysShown: boolean
  /** Set when a reference was followed; the place that shows the row clears it once it has gone there. */
  readonly pointed: Pointed | null
}

export const useScreenStore = create<ScreenState>()(() => ({
  place: placeAtStart(),
  inHand: null,
  sheetName: sheetAtStart(),
  keysShown: false,
  pointed: null,
}))

/** Goes to a place of the rail; the address keeps it, so that a reload comes back here. */
export function goToPlace(place: PlaceId): void {
  history.replaceState(null, '', `#${place}`)
  useScreenStore.setState({ place, keysShown: false })
}

/** Takes a panel in hand. */
export function takeInHand(panelId: string | null): void {
  useScreenStore.setState({ inHand: panelId })
}

/** Takes a sheet to read on, and remembers it on this machine. */
export function takeSheet(sheetName: SheetName): void {
  keepSheet(sheetName)
  useScreenStore.setState({ sheetName })
}

/** Turns to the next sheet: paper, night, outdoor, and paper again. */
export function turnSheet(): void {
  const next = sheetNames.indexOf(useScreenStore.getState().sheetName) + 1
  takeSheet(sheetNames[next % sheetNames.length] ?? 'paper')
}

/** Shows or puts away the list of keys. */
export function showKeys(keysShown: boolean): void {
  useScreenStore.setState({ keysShown })
}
