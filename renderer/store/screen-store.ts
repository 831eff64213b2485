import { create } from 'zustand'
import { type SheetName, sheets } from '../../shared-types/tokens.ts'
import { type PlaceId, placeList } from './place-list.ts'

/** A row that a reference points at: finding 3, exhibit 12. */
export interface Pointed {
  readonly kind: string
  readonly key: string
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

const SHEET_KEY = 'witnessmark.sheet'
/** The sheets in the order in which they are offered and turned through. */
export const sheetNames = Object.keys(sheets) as SheetName[]

function firstSheet(): SheetName {
  const stored = localStorage.getItem(SHEET_KEY)
  const known = sheetNames.find((name) => name === stored)
  if (known !== undefined) return known
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'paper'
}

function placeInAddress(): PlaceId {
  const named = location.hash.slice(1)
  return placeList.find((place) => place.id === named)?.id ?? 'records'
}

export const useScreenStore = create<ScreenState>()(() => ({
  place: placeInAddress(),
  inHand: null,
  sheetName: firstSheet(),
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
  localStorage.setItem(SHEET_KEY, sheetName)
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
