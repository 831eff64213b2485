import type { TapeKind } from '../../../../shared-types/tape-question.ts'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { useKeys } from '../../../parts-of-page/useKeys.ts'
import { tapeKinds } from './tape-entry.ts'

interface TapeKindsProps {
  readonly onOpen: (kind: TapeKind) => void
  readonly disabled: boolean
}

/** What can be measured by tape, calliper or probe, each kind with its key. */
export function TapeKinds({ onOpen, disabled }: TapeKindsProps) {
  const open = (kind: TapeKind) => {
    if (!disabled) onOpen(kind)
  }
  useKeys(
    'Tape and calliper',
    tapeKinds.map(({ kind, keys, title }) => ({ keys, does: title.toLowerCase(), run: () => open(kind) })),
  )
  return (
    <fieldset className="tape-kinds" aria-label="Measure by tape and calliper">
      {tapeKinds.map(({ kind, keys, title }) => (
        <ActionKey key={kind} keys={keys} label={title.toLowerCase()} onAct={() => open(kind)} disabled={disabled} />
      ))}
    </fieldset>
  )
}
