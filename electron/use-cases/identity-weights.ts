import type { IdentityView, TellStanding, TellView } from '../../shared-types/identity-view.ts'
import type { IdentityTells, IdentityWeights } from '../../shared-types/identity-weights.ts'
import type { CarRecord } from '../record/car-record.ts'
import { tellText } from './identity-tells.ts'
import { type AskedOfIdentity, identityBy, shelfOf } from './identity-view.ts'
import type { UseCases } from './program.ts'
import { sheetsOfRecord } from './sheets-of-record.ts'

/** Tells of a record's sheets as these describe them; none where the sheets cannot be used. */
async function tellsOf(record: CarRecord): Promise<IdentityTells> {
  const { key, compiled } = await sheetsOfRecord(record)
  return {
    sheetsKey: key,
    tells: compiled === null ? [] : compiled.tells.map((tell) => tellText(tell, compiled)),
  }
}

const standingOf = ({ key, bits, worth, toldBy, observation }: TellView): TellStanding => ({
  key,
  bits,
  worth,
  toldBy,
  observation,
})

type AskedOfWeights = AskedOfIdentity & {
  readonly chainsOf: readonly string[]
  readonly claimChains: readonly number[]
}

/** What changes of an answer, with the chains that were asked for. */
function weightsOf(
  { tells, more: _more, ...view }: IdentityView,
  sheetsKey: string,
  { chainsOf, claimChains }: AskedOfWeights,
): IdentityWeights {
  return {
    ...view,
    sheetsKey,
    variables: view.variables.map(({ because, ...rest }) => ({
      ...rest,
      because: chainsOf.includes(rest.key) ? because : null,
    })),
    tells: tells.map(standingOf),
    claims: view.claims.map(({ because, ...rest }) => ({
      ...rest,
      because: claimChains.includes(rest.claim) ? because : null,
    })),
  }
}

/** What a page that asks after every key needs of the answer: what stays the same once, and what changes each time. */
export const identityWeightsUseCases: Pick<UseCases, 'identity.tells' | 'identity.weights'> = {
  'identity.tells': (program) => tellsOf(program.record()),
  'identity.weights': async (program, { question = { about: 'build' }, ...rest }) => {
    const asked = { ...rest, question, shelf: shelfOf(program) }
    const record = program.record()
    const own = await sheetsOfRecord(record)
    return weightsOf(await identityBy(own, record.view(), asked), own.key, asked)
  },
}
