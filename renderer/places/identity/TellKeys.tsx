import type { TellView } from '../../../shared-types/identity-view.ts'
import type { KeyBinding } from '../../parts-of-page/key-registry.ts'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import type { MoreOpen } from './TellMore.tsx'
import { valueKey } from './tell-draft.ts'

interface TellKeysProps {
  readonly tell: TellView
  readonly open: MoreOpen | null
  readonly onValue: (value: string) => void
  readonly onState: (state: 'cannot be seen' | 'disturbed') => void
  readonly onMore: (more: MoreOpen) => void
  readonly onKeep: () => void
  readonly onTakeBack: (() => void) | null
  readonly onLeave: () => void
}

/** Keys of a tell. They stand while the focus is inside it, so that the letters of the place keep their meaning elsewhere. */
export function TellKeys(props: TellKeysProps) {
  const { tell, open, onMore } = props
  const values = tell.values.flatMap(({ id, name }, at): KeyBinding[] =>
    valueKey(at) === '' ? [] : [{ keys: valueKey(at), does: name, run: () => props.onValue(id), once: true }],
  )
  const { onTakeBack } = props
  useKeys(tell.name, [
    ...values,
    { keys: 'X', does: 'cannot be seen, with the reason', run: () => props.onState('cannot be seen'), once: true },
    { keys: 'Y', does: 'disturbed', run: () => props.onState('disturbed'), once: true },
    { keys: 'S', does: 'how sure you are', run: () => onMore('sure') },
    ...(tell.unit === null ? [] : [{ keys: 'M', does: 'a measured value', run: () => onMore('measure') }]),
    { keys: 'E', does: 'exhibits it rests on', run: () => onMore('exhibits') },
    { keys: 'T', does: 'a note', run: () => onMore('note') },
    { keys: 'Ctrl+Enter', does: 'keep', run: props.onKeep, whileTyping: true },
    ...(open === 'sure' || open === 'measure'
      ? [{ keys: 'Enter', does: 'keep', run: props.onKeep, whileTyping: true, unlisted: true }]
      : []),
    ...(onTakeBack === null ? [] : [{ keys: 'Delete', does: 'withdraw what was said', run: onTakeBack }]),
    { keys: 'Escape', does: 'leave it as it is', run: props.onLeave, whileTyping: true },
  ])
  return null
}
