import type { ComputationInput } from '../../../shared-types/computations.ts'
import type { IdentityInput } from '../../../shared-types/identity-answer.ts'
import { compute } from '../../analysis/computations.ts'
import { answerIdentity } from '../../analysis/identity/answer-identity.ts'
import { sharesAsked } from '../../analysis/identity/tell-shares.ts'
import { answerAside } from './answer-aside.ts'
import { circuitsOnDisk } from './circuits-on-disk.ts'
import type { ComputationAsked } from './compute-aside.ts'
import { PartsKept } from './kept-parts.ts'

const parts = new PartsKept()

answerAside(({ name, input, kept, shelf }: ComputationAsked) => {
  const given = parts.whole(input, kept)
  // Name and input were typed as a pair by the asker; the message carries them as one.
  if (name === 'identity' && shelf !== null) return answerIdentity(given as IdentityInput, circuitsOnDisk(shelf))
  if (name === 'tell-shares' && shelf !== null)
    return sharesAsked(given as ComputationInput<'tell-shares'>, circuitsOnDisk(shelf))
  return (compute[name] as (whole: unknown) => unknown)(given)
})
