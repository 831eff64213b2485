interface EffortFirstProps {
  readonly byEffort: boolean
  readonly onTurn: (byEffort: boolean) => void
}

/** Whether the looks that take least come first, instead of those that would settle most. */
export function EffortFirst({ byEffort, onTurn }: EffortFirstProps) {
  return (
    <label className="what-if">
      <input type="checkbox" checked={byEffort} onChange={(event) => onTurn(event.target.checked)} />
      Least effort first: bits by effort and access, on a scale of our own
    </label>
  )
}
