import { useEffect, useRef } from 'react'
import { editSheet } from './sheet-desk-store.ts'

/** A sheet as its text. `line` is gone to whenever `times` changes. */
export function SheetText({
  text,
  goTo,
}: {
  readonly text: string
  readonly goTo: { readonly line: number; readonly times: number } | null
}) {
  const field = useRef<HTMLTextAreaElement>(null)
  useEffect(() => field.current?.focus(), [])
  useEffect(() => {
    const area = field.current
    if (goTo === null || area === null) return
    const lines = area.value.split('\n')
    const start = lines.slice(0, goTo.line - 1).reduce((sum, line) => sum + line.length + 1, 0)
    area.focus()
    area.setSelectionRange(start, start + (lines[goTo.line - 1]?.length ?? 0))
    area.scrollTop = (area.scrollHeight / Math.max(1, lines.length)) * Math.max(0, goTo.line - 6)
  }, [goTo])
  return (
    <textarea
      ref={field}
      className="sheet-text figures"
      aria-label="The sheet as text (YAML)"
      spellCheck={false}
      value={text}
      onChange={(event) => editSheet({ written: 'as text', text: event.target.value }, 'text')}
      onBlur={() => undefined}
    />
  )
}
