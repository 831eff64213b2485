import type { NextLook } from '../../shared-types/identity-view.ts'
import { goToPlace, useScreenStore } from '../store/screen-store.ts'
import { useAnswer } from '../store/use-answer.ts'
import { KeyCap } from './KeyCap.tsx'
import { useKeys } from './useKeys.ts'

/** Keys of the three looks, side by side on a keyboard. */
const lookKeys = ['Alt+J', 'Alt+K', 'Alt+L'] as const

function goTo(look: NextLook | undefined): void {
  if (look === undefined) return
  useScreenStore.setState({ pointed: { kind: 'tell', key: look.tell } })
  goToPlace('identity')
}

/** The three looks that would settle most of this car, from any place; each with a key that goes there. */
export function LookNext({ follows }: { readonly follows: number }) {
  const { value: looks } = useAnswer('looks.next', {}, follows)
  useKeys(
    'Look next',
    lookKeys.slice(0, looks?.length ?? 0).map((keys, at) => ({
      keys,
      does: `look next: ${looks?.[at]?.name ?? ''}`,
      run: () => goTo(looks?.[at]),
      whileTyping: true,
    })),
  )
  if (looks === null || looks.length === 0) return null
  return (
    <div className="rail-looks">
      <p>Look next: Alt +</p>
      <ul>
        {looks.map((look, at) => (
          <li key={look.tell}>
            <button type="button" className="rail-look" title={look.reason} onClick={() => goTo(look)}>
              <KeyCap keys={(lookKeys[at] ?? '').slice(-1)} /> {look.name}
              <span className="unseen">. {look.reason}</span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  )
}
