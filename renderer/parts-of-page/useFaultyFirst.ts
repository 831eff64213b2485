import { type RefObject, useEffect, useRef } from 'react'

/** Puts the focus, and with it the view, on the first such field of the form; false where there is none. */
function goToFirst(form: HTMLElement | null, which: string): boolean {
  const field = form?.querySelector<HTMLElement>(which)
  if (field === null || field === undefined) return false
  const fold = field.closest('details')
  if (fold !== null) fold.open = true
  field.focus()
  return true
}

/**
 * Keeps a form only when all that was typed could be read: what cannot be read is no value, and would be lost without a
 * word. The focus goes to the first field that could not, and after a refusal to the first that was refused.
 */
export function useFaultyFirst(form: RefObject<HTMLElement | null>): (keep: () => void) => void {
  const asked = useRef(false)
  useEffect(() => {
    if (asked.current && goToFirst(form.current, '[aria-invalid="true"]')) asked.current = false
  })
  return (keep) => {
    if (goToFirst(form.current, '[data-unread]')) return
    asked.current = true
    keep()
  }
}
