import type { Door } from '../../shared-types/contract.ts'
import { pageDoor } from './page-door.ts'

declare global {
  interface Window {
    /** Put there by the desktop window's preload; absent when the program runs as a page. */
    readonly witnessmark?: Door
  }
}

let opened: Door | null = null

/** The one way to the main process: the desktop window's bridge, or the page's HTTP door. */
export function door(): Door {
  opened ??= window.witnessmark ?? pageDoor()
  return opened
}
