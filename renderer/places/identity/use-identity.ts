import { useEffect, useMemo, useRef } from 'react'
import type { RequestInput } from '../../../shared-types/contract.ts'
import type { TellStanding, TellText, TellView } from '../../../shared-types/identity-view.ts'
import type { IdentityWeights } from '../../../shared-types/identity-weights.ts'
import type { Problem } from '../../../shared-types/problem.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { useAnswer } from '../../store/use-answer.ts'

/** What the car can still be, as the page shows it: the weights, and every tell whole. */
export type IdentityShown = Omit<IdentityWeights, 'tells'> & { readonly tells: readonly TellView[] }

interface Whole {
  readonly text: TellText
  readonly tell: TellView
}

/** By what an answer says of it: an answer that says the same again is the same tell to whatever draws it. */
const wholes = new WeakMap<TellStanding, Whole>()

function wholeTell(text: TellText, standing: TellStanding): TellView {
  const known = wholes.get(standing)
  if (known?.text === text) return known.tell
  const tell = { ...text, ...standing }
  wholes.set(standing, { text, tell })
  return tell
}

/** Every tell with what its sheet says of it; null where the two speak of different sheets. */
function wholeTells(texts: ReadonlyMap<string, TellText>, standings: readonly TellStanding[]): TellView[] | null {
  const tells: TellView[] = []
  for (const standing of standings) {
    const text = texts.get(standing.key)
    if (text === undefined) return null
    tells.push(wholeTell(text, standing))
  }
  return tells
}

/**
 * Asks what the car can still be, as often as something else is asked or noted. What the sheets say of their tells is asked
 * once; while a sheet is exchanged what was shown before stays, and the answer is busy.
 */
export function useIdentity(
  asked: RequestInput<'identity.weights'>,
  record: RecordView,
): {
  readonly view: IdentityShown | null
  /** What the weights answer, as `useAnswer` has it. */
  readonly answered: string | null
  readonly problem: Problem | null
  readonly busy: boolean
} {
  const described = useAnswer('identity.tells', {}, record.sheets)
  const weighed = useAnswer('identity.weights', asked, record.journalNumber)
  const [description, weights] = [described.value, weighed.value]
  const texts = useMemo(() => new Map(description?.tells.map((text) => [text.key, text])), [description])
  const fresh = useMemo((): IdentityShown | null => {
    if (weights === null || weights.sheetsKey !== description?.sheetsKey) return null
    const tells = wholeTells(texts, weights.tells)
    return tells === null ? null : { ...weights, tells }
  }, [weights, description, texts])
  const before = useRef<IdentityShown | null>(null)
  useEffect(() => {
    if (fresh !== null) before.current = fresh
  }, [fresh])
  return {
    view: fresh ?? before.current,
    answered: weighed.answered,
    problem: weighed.problem ?? described.problem,
    busy: weighed.busy || (fresh === null && described.busy),
  }
}
