import { type IdentityLiteral, type IdentityModel, identityModel } from '../../../shared-types/identity-model.ts'
import { type Chance, chanceFrom } from './random-models.ts'

export interface CarLineSize {
  readonly variables: number
  readonly rules: number
  /** Values of the build date. */
  readonly dates: number
}

const names = (count: number, stem: string) => Array.from({ length: count }, (_, at) => `${stem}${at}`)

/**
 * A generated sheet shaped like a car line: build date, plant, line, body, engine, gearbox in the middle; every other
 * variable is a feature that changed over at some date (by plant), went with a line, body, engine or gearbox, or requires
 * something of a feature near it. One account counts lines by body. Every feature has a tell.
 */
export function carLineModel(size: CarLineSize, seed: number): IdentityModel {
  const chance = chanceFrom(seed)
  const middle = [
    { name: 'date', values: names(size.dates, 'm') },
    { name: 'plant', values: names(3, 'p') },
    { name: 'line', values: names(4, 'l') },
    { name: 'body', values: names(5, 'b') },
    { name: 'engine', values: names(5, 'e') },
    { name: 'gearbox', values: names(3, 'g') },
  ]
  const features = Array.from({ length: size.variables - middle.length }, (_, at) => ({
    name: `feature ${at}`,
    values: names(3 + chance.below(6), `f${at}.`),
  }))
  const variables = [...middle, ...features]
  const of = (name: string) => variables.find((variable) => variable.name === name)?.values ?? []
  const rules: { ifs: IdentityLiteral[]; thenAny: IdentityLiteral[] }[] = []
  // The first value of a feature is the plain one, always allowed, unless the feature changed over.
  const [plain, changed] = [features.filter((_, at) => at % 3 > 0), features.filter((_, at) => at % 3 === 0)]
  const fewer = (values: readonly string[]) => {
    const dropped = chance.some(values.slice(1)).slice(0, 2)
    return values.filter((value) => !dropped.includes(value))
  }
  for (const { name, values } of changed)
    for (const plant of of('plant')) {
      const change = 1 + chance.below(size.dates - 1)
      const early = 1 + chance.below(values.length - 1)
      const when = (dates: readonly string[]): IdentityLiteral[] => [
        ['plant', [plant]],
        ['date', dates],
      ]
      rules.push({ ifs: when(of('date').slice(0, change)), thenAny: [[name, values.slice(0, early)]] })
      rules.push({ ifs: when(of('date').slice(change)), thenAny: [[name, values.slice(early)]] })
    }
  const makers: ((own: (typeof features)[number], next: (typeof features)[number]) => void)[] = [
    (own) => {
      const hub = chance.pick(['line', 'body', 'engine', 'gearbox'])
      rules.push({ ifs: [[hub, [chance.pick(of(hub))]]], thenAny: [[own.name, fewer(own.values)]] })
    },
    (own) => {
      const value = chance.pick(own.values.slice(1))
      rules.push({ ifs: [[own.name, [value]]], thenAny: [['date', of('date').slice(chance.below(size.dates / 2))]] })
    },
    (own, next) => {
      const value = chance.pick(own.values.slice(1))
      rules.push({ ifs: [[own.name, [value]]], thenAny: [[next.name, fewer(next.values)]] })
    },
    (own) => {
      const [line, bodies] = [chance.pick(of('line')), chance.some(of('body')).slice(0, 2)]
      rules.push({
        ifs: [
          ['line', [line]],
          ['body', bodies],
        ],
        thenAny: [[own.name, fewer(own.values)]],
      })
    },
  ]
  neverBuilt(chance, of, rules)
  for (let at = 0; rules.length < size.rules; at++) {
    const [own, next] = [plain[at % plain.length], plain[(at + 1 + chance.below(2)) % plain.length]]
    if (own !== undefined && next !== undefined && own !== next) chance.pick(makers)(own, next)
  }
  return identityModel.parse({
    variables,
    rules: rules.slice(0, size.rules).map((rule, at) => ({ id: `r${at}`, source: `list ${at % 9}`, ...rule })),
    tables: features.map(({ name, values }) => ({
      id: `w ${name}`,
      scope: [name],
      weights: values.map(() => 0.05 + chance.unit()),
    })),
    accounts: [
      {
        id: 'works',
        reliability: 1,
        tables: [{ id: 'by line', scope: ['line'], counts: of('line').map(() => 100 + chance.below(9000)) }],
      },
    ],
    tells: features.map(({ name, values }) => ({
      id: `tell ${name}`,
      variable: name,
      effort: 1 + chance.below(20),
      reads: {
        kind: 'part',
        replaced: 0.15 * chance.unit(),
        service: Object.fromEntries(values.map((value) => [value, 1 / values.length])),
        wrong: 0.02,
        misread: 0.03,
        donor: null,
      },
    })),
  })
}

type Rules = { ifs: IdentityLiteral[]; thenAny: IdentityLiteral[] }[]

/** Lines without some bodies, engines without some lines and gearboxes, bodies at one plant only. */
function neverBuilt(chance: Chance, of: (name: string) => readonly string[], rules: Rules): void {
  for (const line of of('line'))
    rules.push({ ifs: [['line', [line]]], thenAny: [['body', chance.some(of('body'), 2)]] })
  for (const engine of of('engine')) {
    rules.push({ ifs: [['engine', [engine]]], thenAny: [['line', chance.some(of('line'), 2)]] })
    rules.push({ ifs: [['engine', [engine]]], thenAny: [['gearbox', chance.some(of('gearbox'), 1)]] })
    const from = chance.below(of('date').length - 10)
    rules.push({ ifs: [['engine', [engine]]], thenAny: [['date', of('date').slice(from)]] })
  }
  for (const body of of('body'))
    rules.push({ ifs: [['body', [body]]], thenAny: [['plant', chance.some(of('plant'), 1)]] })
}
