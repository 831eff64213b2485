import { z } from 'zod'
import { calendarDay, lineText, noteText, requiredLine } from './units.ts'
import { verdict } from './words.ts'

/** What somebody says about the car. Number C1, C2... */
export const claimDraft = z.strictObject({
  /** The claim in the claimant's own words. */
  words: requiredLine,
  who: lineText,
  kind: z.enum(['seller', 'advert', 'plate or badge', 'invoice', 'register', 'owner', 'other']),
  on: calendarDay.nullable(),
  where: lineText,
  /** Number of the claim this one repeats; null when it is a first source. A repeated claim is no second witness. */
  repeats: z.number().int().positive().nullable(),
  /** The question the claim answers and two propositions that exclude each other. */
  question: noteText,
  ifTrue: noteText,
  ifNot: noteText,
  takenAsGiven: noteText,
  verdict,
  /** Strength of the findings for the verdict, in words the examiner stands by. */
  strength: z.enum([
    'not stated',
    'no support',
    'weak',
    'moderate',
    'moderately strong',
    'strong',
    'very strong',
    'extremely strong',
  ]),
  reasons: noteText,
  setAside: noteText,
  wouldSettle: noteText,
  findings: z.array(z.number().int().positive()).max(200),
  exhibits: z.array(z.number().int().positive()).max(200),
})
export const claim = claimDraft.extend({ number: z.number().int().positive() })
export type ClaimDraft = z.infer<typeof claimDraft>
export type Claim = z.infer<typeof claim>
