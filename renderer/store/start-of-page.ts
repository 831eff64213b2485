import { type SheetName, sheets } from '../../shared-types/tokens.ts'
import { type PlaceId, placeList } from './place-list.ts'

/** The sheets in the order in which they are offered and turned through. */
export const sheetNames = Object.keys(sheets) as SheetName[]

const SHEET_KEY = 'witnessmark.sheet'

/** The sheet a page starts on: the one last taken on this machine, else what the system prefers. */
export function sheetAtStart(): SheetName {
  const stored = localStorage.getItem(SHEET_KEY)
  const known = sheetNames.find((name) => name === stored)
  if (known !== undefined) return known
  return window.matchMedia('(prefers-color-scheme: dark)').matches ? 'night' : 'paper'
}

/** Remembers on this machine the sheet to start on. */
export function keepSheet(sheetName: SheetName): void {
  localStorage.setItem(SHEET_KEY, sheetName)
}

/** The place a page starts at: the one its address names, else the records. */
export function placeAtStart(): PlaceId {
  const named = location.hash.slice(1)
  return placeList.find((place) => place.id === named)?.id ?? 'records'
}
