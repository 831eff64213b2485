import { describe, expect, it } from 'vitest'
import { sharesAsked } from '../../../electron/analysis/identity/tell-shares.ts'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import { tellShares } from '../../../shared-types/tell-shares.ts'
import { everyCase, posteriorByEnumeration } from './enumeration.ts'
import { randomEvidence, randomModel } from './random-models.ts'

/*
 * The outside here is the definition itself: every combination gone through one by one (`enumeration.ts` shares no code
 * with the engine).
 */
describe('shares asked with readings left out', () => {
  it('are those of enumeration without the reading, under what is given, on random models', () => {
    let compared = 0
    for (let seed = 4100; seed < 4400; seed += 1) {
      const model = randomModel(seed)
      if (everyCase(model).reduce((sum, { prior: [first] }) => sum + (first ?? 0), 0) === 0) continue
      const evidence = randomEvidence(model, seed)
      const [left] = evidence.readings
      const [variable] = model.variables
      const [value] = variable?.values ?? []
      if (left === undefined || variable === undefined || value === undefined) continue
      const says = [[variable.name, [value]] as const]
      let answers: ReturnType<typeof sharesAsked>['answers']
      try {
        answers = sharesAsked(
          tellShares.input.parse({
            model,
            evidence,
            questions: [{ id: 'q', variables: [variable.name], statements: [{ id: 's', says }], without: [left.id] }],
          }),
        ).answers
      } catch (fault) {
        expect(fault).toBeInstanceOf(ProblemError)
        continue
      }
      const wanted = posteriorByEnumeration(model, {
        ...evidence,
        readings: evidence.readings.filter(({ id }) => id !== left.id),
      })
      const [answer] = answers
      expect(answer?.possible).toBe(wanted.total > 0)
      if (wanted.total === 0) continue
      const share = wanted.cases.reduce(
        (sum, { build }, at) => sum + (build[variable.name] === value ? (wanted.weights[at] ?? 0) : 0),
        0,
      )
      expect(answer?.variables[variable.name]?.[value]).toBeCloseTo(share, 10)
      expect(answer?.statements.s).toBeCloseTo(share, 10)
      compared += 1
    }
    expect(compared).toBeGreaterThan(100)
  })

  it('take what is given as so, and say when nothing is left', () => {
    const model = {
      variables: [
        { name: 'body', values: ['saloon', 'van'] },
        { name: 'box', values: ['s', 'v'] },
      ],
      rules: [
        { id: 'r1', ifs: [['body', ['van']]], thenAny: [['box', ['v']]] },
        { id: 'r2', ifs: [['body', ['saloon']]], thenAny: [['box', ['s']]] },
      ],
    }
    const asked = (given: unknown) =>
      sharesAsked(
        tellShares.input.parse({ model, questions: [{ id: 'q', variables: ['box'], statements: [], given }] }),
      ).answers[0]
    expect(asked([['body', ['van']]])?.variables.box).toEqual({ s: 0, v: 1 })
    expect(
      asked([
        ['body', ['van']],
        ['box', ['s']],
      ])?.possible,
    ).toBe(false)
  })
})
