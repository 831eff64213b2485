import type { IdentityAnswer, IdentityInput } from '../../shared-types/identity-answer.ts'
import type { IdentityEvidence, IdentityLiteral } from '../../shared-types/identity-model.ts'
import type { ClaimOutlook, IdentityMore, NamedValue, ProbableBuildView } from '../../shared-types/identity-more.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import { computeAside } from './computing/compute-aside.ts'
import { type Noted, toldByNumbers } from './identity-evidence.ts'
import { rarityView, whatIsCounted } from './identity-rarity.ts'
import { factInWords, seenWords, valueName } from './identity-words.ts'
import type { SheetsOfRecord } from './sheets-of-record.ts'

const BUILDS_LISTED = 3
const LOOKS_LISTED = 3
/** Bits below which a look is not said to settle anything of a claim. */
const LEAST_BITS = 0.005
/** What costs a story fewer decibans than this goes without saying, and no more than so many are named. */
const LEAST_GRANTED = 3
const MOST_GRANTED = 5
/** A weight from which a value is taken as settled and not listed again. */
const ALL_BUT_CERTAIN = 0.995

/** The engine's input with nothing asked in it. */
export const nothingAsked = {
  question: { about: 'build' },
  statement: null,
  statements: [],
  chains: null,
  likeliest: [],
  inOrder: false,
  options: null,
  builds: 0,
} satisfies Omit<IdentityInput, 'model' | 'evidence'>

interface AskedMore {
  readonly own: SheetsOfRecord
  readonly compiled: CompiledSheets
  readonly evidence: IdentityEvidence
  readonly statements: readonly {
    readonly id: string
    readonly claim: number
    readonly says: readonly IdentityLiteral[]
  }[]
  readonly noted: Noted
  readonly shelf: string | null
}

/** What takes longer than the weights: most probable builds, rarity, and the outlook of every claim. */
export async function moreAbout(about: AskedMore): Promise<IdentityMore | null> {
  const { own, compiled, evidence, statements, noted, shelf } = about
  const { model } = compiled
  if (model === null) return null
  const ask = (asked: Partial<IdentityInput>) => {
    const input: IdentityInput = { ...nothingAsked, model, evidence, ...asked }
    return computeAside('identity', input, { keeps: { field: 'model', key: own.key }, shelf, when: 'later' })
  }
  const first = await ask({ builds: BUILDS_LISTED })
  if (first.posterior === null) return { builds: [], proved: true, rarity: null, claims: [] }
  const counted = whatIsCounted(compiled, first)
  const options = counted.settled.length === 0 ? null : counted.settled
  const rarity = options === null ? null : (await ask({ options })).rarity
  const claims: ClaimOutlook[] = []
  const told = toldByNumbers(noted)
  for (const { claim, says } of statements) {
    const answer = await ask({ statement: says, question: { about: 'statement', says } })
    claims.push({ claim, settledBy: settledBy(compiled, answer, told), story: storyOf(about, answer, first) })
  }
  return {
    builds: buildViews(compiled, first),
    proved: first.mostProbable?.proved ?? false,
    rarity: rarity === null ? null : rarityView(compiled, rarity, counted),
    claims,
  }
}

function buildViews(compiled: CompiledSheets, answer: IdentityAnswer): readonly ProbableBuildView[] {
  const builds = answer.mostProbable?.builds ?? []
  const [first] = builds
  return builds.map(({ build, probability }) => ({
    share: probability,
    values: compiled.variables.flatMap(({ key }): NamedValue[] => {
      const value = build[key] ?? ''
      const listed =
        build === first?.build
          ? (answer.posterior?.variables[key]?.[value] ?? 0) < ALL_BUT_CERTAIN
          : value !== first?.build[key]
      return listed ? [{ variable: compiled.nameOf(key), value: valueName(compiled, key, value) }] : []
    }),
  }))
}

function settledBy(
  compiled: CompiledSheets,
  answer: IdentityAnswer,
  told: ReadonlySet<string>,
): ClaimOutlook['settledBy'] {
  const names = new Map(compiled.tells.map(({ key, tell }) => [key, tell.name]))
  return (answer.worths?.tells ?? [])
    .filter(({ tell, bits }) => bits >= LEAST_BITS && !told.has(tell))
    .toSorted((one, other) => other.bits - one.bits)
    .slice(0, LOOKS_LISTED)
    .map(({ tell, bits }) => ({ tell, name: names.get(tell) ?? tell, bits }))
}

/** The cheapest course of events under which a claim is true, as an argument: what was built, then what must be granted. */
function storyOf(
  { own, compiled, noted }: AskedMore,
  { story }: IdentityAnswer,
  { mostProbable }: IdentityAnswer,
): ClaimOutlook['story'] {
  if (story === null) return null
  const likeliest = mostProbable?.builds[0]?.build ?? {}
  const otherwise = compiled.variables
    .filter(({ key }) => story.build[key] !== undefined && story.build[key] !== likeliest[key])
    .map(({ key }) => `${compiled.nameOf(key)}: ${valueName(compiled, key, story.build[key] ?? '')}`)
  const granted = story.steps
    .filter(({ how, decibansBehind }) => how !== 'as built' && how !== 'said so' && decibansBehind >= LEAST_GRANTED)
    .toSorted((one, other) => other.decibansBehind - one.decibansBehind)
    .slice(0, MOST_GRANTED)
    .map(({ id, how }) => `${seenWords(id, compiled, noted)} (${howWords(id, how)})`)
  const donors = story.donors.map(({ donor, kind }) => donorWords(compiled, donor, kind))
  const wrong = story.factsWrong.map((id) => `“${factInWords(own, id) ?? id}” (a doubtful fact of the sheet)`)
  const line = (head: string, items: readonly string[]) => (items.length === 0 ? [] : [`${head} ${items.join('; ')}.`])
  return {
    decibansBehind: story.decibansBehind,
    argument: [
      ...line('Built, unlike the likeliest build, with', otherwise),
      ...line('Came from another car:', donors),
      ...line('Seen, and to be granted before all:', granted),
      ...line('Would have to be wrong:', wrong),
    ],
  }
}

/** How a number that fits badly came to stand there; what a sheet calls misread of a tell has its own word. */
const howWords = (id: string, how: string): string =>
  id.startsWith('number ') && how === 'misread' ? 'misread, or not the number it left with' : how

function donorWords(compiled: CompiledSheets, donor: string, kind: string): string {
  const tells = compiled.model?.donors.find(({ id }) => id === donor)?.kinds.find(({ id }) => id === kind)?.fitted ?? {}
  const names = Object.keys(tells).flatMap((key) => compiled.tells.find((each) => each.key === key)?.tell.name ?? [])
  const [cite] = compiled.cites.get(donor) ?? []
  const own = compiled.names.sheets
    .find(({ sheetId }) => sheetId === cite?.sheetId)
    ?.donors.find(({ id }) => id === cite?.factId)
  return `${names.join(', ') || (own?.name ?? donor)} (${own?.kinds.find(({ id }) => id === kind)?.name ?? kind})`
}
