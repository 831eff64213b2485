import type { ReactNode } from 'react'
import { figureText } from './figure-text.ts'

/** Figures, numbers as read, times and ids, in the figure face. */
export function Figure({ children }: { readonly children: ReactNode }) {
  return <span className="figures">{children}</span>
}

interface QuantityProps {
  readonly value: number | null
  /** Empty for a count. */
  readonly unit: string
  readonly decimals?: number
  /** Expanded uncertainty, k = 2, in the same unit. */
  readonly plusMinus?: number | null
}

/** A number with its unit and, where it was measured, its uncertainty; "not measured" where there is none. */
export function Quantity({ value, unit, decimals = 0, plusMinus = null }: QuantityProps) {
  if (value === null) return <span className="quiet">not measured</span>
  const spread = plusMinus === null ? '' : ` ± ${figureText(plusMinus, decimals)}`
  return (
    <span className="quantity">
      <span className="figures">
        {figureText(value, decimals)}
        {spread}
      </span>
      {unit === '' ? null : <span className="unit">{`\u202f${unit}`}</span>}
    </span>
  )
}
