import { beforeAll, describe, expect, it } from 'vitest'
import { answerIdentity } from '../../electron/analysis/identity/answer-identity.ts'
import { compileSheets } from '../../electron/sheets/reference/compile-sheets.ts'
import { shippedSheets } from '../../electron/sheets/reference/shipped-sheets.ts'
import { readDemonstration } from '../../electron/use-cases/demonstration-record.ts'
import { claimViews } from '../../electron/use-cases/identity-claims.ts'
import { identityEvidence, literalsOf, notedBy } from '../../electron/use-cases/identity-evidence.ts'
import { rowMark } from '../../electron/use-cases/row-marks.ts'
import type { CarNumber } from '../../shared-types/car.ts'
import type { Claim } from '../../shared-types/claim.ts'
import { type IdentityAnswer, identityInput } from '../../shared-types/identity-answer.ts'
import type { ClaimView } from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'

const survey = readDemonstration()
const compiled = compileSheets(shippedSheets().flatMap(({ sheet }) => (sheet.sheetId === 'sedge' ? [sheet] : [])))
const observations = survey.steps.flatMap((step): Observation[] =>
  step.request === 'observation.set' ? [step.input.observation] : [],
)
const claims = survey.steps.flatMap((step): Claim[] =>
  step.request === 'claim.amend' ? [{ ...step.input.draft, number: step.input.number }] : [],
)

const carNumbers = survey.steps
  .flatMap((step) => (step.request === 'carNumber.add' ? [step.input.draft] : []))
  .map((draft, at): CarNumber => ({ ...draft, number: at + 1 }))
const notedOf = (seen: readonly Observation[]) => notedBy({ observations: seen, carNumbers }, compiled)

/** Everything the engine says of the car, of some of what was seen. */
function asked(seen: readonly Observation[]): IdentityAnswer {
  const statements = claims.flatMap((claim) => {
    const says = literalsOf(claim, compiled)
    return says === null ? [] : [{ id: rowMark('claims', claim.number), says }]
  })
  const evidence = identityEvidence(notedOf(seen), claims, compiled)
  return answerIdentity(identityInput.parse({ model: compiled.model, evidence, statements }))
}

let answer: IdentityAnswer
let views: readonly ClaimView[]
beforeAll(() => {
  answer = asked(observations)
  views = claimViews(claims, compiled, answer, notedOf(observations))
}, 60_000)

const share = (variable: string, values: readonly string[]) =>
  values.reduce((sum, value) => sum + (answer.posterior?.variables[`sedge/${variable}`]?.[value] ?? 0), 0)

describe('the demonstration car read against its sheet', () => {
  it('notes only tells and values the sheet has', () => {
    for (const { tell, value } of observations) {
      const own = compiled.tells.find(({ key }) => key === tell)
      expect(own, tell).toBeDefined()
      if (value !== null)
        expect(
          own?.values.map(({ id }) => id),
          tell,
        ).toContain(value)
    }
  })

  it('upholds two claims, denies two, and leaves open the two of which the sheet says nothing', () => {
    const verdicts = claims.map(({ number }) => views.find(({ claim }) => claim === number)?.verdict ?? 'not settled')
    expect(verdicts).toEqual(['contradicted', 'contradicted', 'supported', 'supported', 'not settled', 'not settled'])
    expect(claims.map(({ verdict }) => verdict)).toEqual(verdicts)
  })

  it('denies the badge for more than one reason: no one sign of the plain car carries it alone', () => {
    const lantern = views.find(({ claim }) => claim === 1)
    const against = lantern?.because.filter(({ decibans, decisive }) => decisive === null && (decibans ?? 0) < -3) ?? []
    expect(against.length).toBeGreaterThanOrEqual(3)
    const strongest = against[0]?.id
    const without = asked(observations.filter(({ tell }) => tell !== strongest))
    const left = claimViews(claims, compiled, without, notedOf(observations)).find(({ claim }) => claim === 1)
    expect(left?.verdict).toBe('contradicted')
  })

  it('takes the badge itself for what it is: a sign for the Lantern, and too weak', () => {
    const badge = views.find(({ claim }) => claim === 1)?.because.find(({ id }) => id === 'sedge/badges')
    expect(badge?.decibans).toBeGreaterThan(0)
    expect(share('series', ['lantern'])).toBeLessThan(0.01)
  })

  it('narrows the day of building to the spring of the tag, and no further than what was seen allows', () => {
    expect(share('built', ['m1960-03', 'm1960-04', 'm1960-05'])).toBeGreaterThan(0.9)
    const months = Object.entries(answer.posterior?.variables['sedge/built'] ?? {}).filter(([, now]) => now > 0.05)
    expect(months.length).toBeGreaterThanOrEqual(2)
  })

  it('says that engine and gearbox came off other cars', () => {
    expect(answer.posterior?.donors['sedge/engine-donor']?.none).toBeLessThan(0.05)
    expect(answer.posterior?.donors['sedge/gearbox-donor']?.van).toBeGreaterThan(0.9)
  })

  it('would look under the loom for the day of building before anything else that dates a car', () => {
    const question = { about: 'variable' as const, variable: 'sedge/built' }
    const evidence = identityEvidence(notedOf(observations), claims, compiled)
    const asking = answerIdentity(identityInput.parse({ model: compiled.model, evidence, question }))
    const best = asking.worths?.tells.toSorted((one, other) => other.bits - one.bits)[0]
    expect(best?.tell).toBe('sedge/loom-bracket')
  })
})
