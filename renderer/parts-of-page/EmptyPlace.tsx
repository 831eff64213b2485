import type { ReactNode } from 'react'

/** Said where nothing stands yet: what this is for, and what to do first. */
export function EmptyPlace({ head, children }: { readonly head: string; readonly children: ReactNode }) {
  return (
    <div className="empty-place">
      <h2>{head}</h2>
      {children}
    </div>
  )
}
