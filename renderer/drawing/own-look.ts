import { useState } from 'react'
import { type LookSource, type PlanLook, wholeSheet } from './plan-scale.ts'

/** A look that belongs to one drawing alone. */
export interface OwnLook extends LookSource {
  change(how: (look: PlanLook) => PlanLook): void
}

function ownLook(): OwnLook {
  let look = wholeSheet
  const heard = new Set<() => void>()
  return {
    now: () => look,
    subscribe: (hear) => {
      heard.add(hear)
      return () => heard.delete(hear)
    },
    change: (how) => {
      look = how(look)
      for (const hear of heard) hear()
    },
  }
}

/** How the reader has moved a drawing that is moved by itself; begins with all of it. */
export const useOwnLook = (): OwnLook => useState(ownLook)[0]
