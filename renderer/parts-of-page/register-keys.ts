import type { KeyboardEvent } from 'react'

/** The row of a register an element stands in. */
export const rowOf = (target: EventTarget): HTMLElement | null =>
  (target as Element).closest<HTMLElement>('.register-row')

/** Where a key leads from an element of a row; null where it leads nowhere. */
function ledTo(key: string, row: HTMLElement, from: Element): Element | null | undefined {
  const rows = row.parentElement
  if (key === 'ArrowDown') return row.nextElementSibling
  if (key === 'ArrowUp') return row.previousElementSibling
  if (key === 'Home') return rows?.firstElementChild
  if (key === 'End') return rows?.lastElementChild
  if (key !== 'ArrowRight' && key !== 'ArrowLeft') return null
  const within = [row, ...row.querySelectorAll('button, a')]
  return within[within.indexOf(from) + (key === 'ArrowRight' ? 1 : -1)]
}

/** Moves between the rows of a register, and within a row to its controls and back; Enter on a row opens it by its key. */
export function keyInRegister(event: KeyboardEvent, open: (key: string) => void): void {
  const row = rowOf(event.target)
  if (row === null || event.ctrlKey || event.altKey || event.metaKey) return
  if (event.key === 'Enter' && event.target === row) {
    event.preventDefault()
    open(row.dataset.key ?? '')
    return
  }
  const next = ledTo(event.key, row, event.target as Element)
  if (!(next instanceof HTMLElement)) return
  event.preventDefault()
  next.focus()
}
