import { expect, it } from 'vitest'
import { compute } from '../../electron/analysis/computations.ts'
import { type ComputationName, computations } from '../../shared-types/computations.ts'

const day = { from: '1966-05-14', to: '1966-05-14' }
const sources = [{ label: 'tape', by: { kind: 'half-width', halfWidth: 1, shape: 'rectangular' } }]
const bar = { from: { x: 0, y: 0 }, to: { x: 100, y: 0 }, lengthMm: 50, uMm: 0.1 }
const grammar = {
  id: 'year',
  label: 'Year',
  source: 'invented',
  usedFrom: 1960,
  usedTo: 1969,
  elements: [{ kind: 'figures', field: 'year', minDigits: 1, maxDigits: 1 }],
}
const joint = [0, 1, 2].map((at) => ({ atMm: at, gapMm: 4 }))

const coating = {
  readings: [{ xMm: 50, yMm: 50, value: { kind: 'value', um: 110 } }],
  nodes: [0, 1, 2, 3].map((at) => ({ xMm: 25 + 50 * (at % 2), yMm: 25 + 50 * Math.floor(at / 2), areaMm2: 2500 })),
  gauge: { constantUm: 3, percent: 3, meaning: 'tolerance' },
  reference: null,
  draws: 60,
}
const questions: { readonly [N in ComputationName]: unknown } = {
  originality: { panels: [], parts: [] },
  'spot-summary': { values: [{ kind: 'value', um: 120 }], gauge: { errorUm: 1, errorPercent: 1 } },
  univariate: { values: [1, 2] },
  'rust-grade': { affectedPercent: 3 },
  'convert-length': { value: 1, from: 'in', to: 'mm' },
  'convert-coating': { value: 1, from: 'mil', to: 'µm' },
  identity: { model: { variables: [{ name: 'body', values: ['saloon', 'van'] }] }, statement: [['body', ['van']]] },
  'tell-shares': {
    model: { variables: [{ name: 'body', values: ['saloon', 'van'] }] },
    questions: [{ id: 'q', variables: ['body'], statements: [{ id: 's', says: [['body', ['van']]] }] }],
  },
  coating,
  'coating-change': { before: coating, after: coating },
  'coating-section': { field: coating, line: { from: { xMm: 5, yMm: 50 }, to: { xMm: 95, yMm: 50 } } },
  'identification-number': { asRead: '1M8GDM9A?KP042788', market: 'Canada', vehicle: 'other' },
  'tyre-code': { asRead: '031' },
  'date-code': { asRead: '6', grammars: [grammar] },
  'time-line': {
    events: [{ id: 'built', label: 'built' }],
    facts: [{ id: 'record', event: 'built', label: 'record', readings: [day], source: '' }],
    rules: [],
  },
  odometer: { readings: [{ id: 'a', when: day, value: 5, unit: 'km', label: 'a' }], figures: 5 },
  fastening: {
    expected: { head: 'hexagon', drive: '', thread: '', plating: '', mark: '' },
    expectedBy: '',
    found: { head: 'pan', drive: '', thread: '', plating: '', mark: '' },
    witness: 'disturbed',
  },
  'sample-bound': { looked: 12, found: 0, ofHowMany: 40, what: 'screws' },
  'sample-size': { ofHowMany: 40, atMost: 4 },
  'random-sample': { from: ['a', 'b'], draw: 1, seed: 's' },
  'part-support': {
    parts: [{ id: 'a', label: 'a', group: null, ifFactory: 1, pool: [{ label: 'p', low: 1, high: 2, matching: 0.1 }] }],
  },
  'joint-options': { sources: [{ label: 's', built: 9, options: [{ label: 'o', count: 4 }] }] },
  'combined-uncertainty': { sources, unit: 'mm' },
  'drawn-uncertainty': { estimate: 1, sources },
  'limit-decision': { value: 1, expanded: 1, lower: 0, upper: null, unit: 'mm' },
  grubbs: { values: [1, 2, 9] },
  'tell-exactness': {
    value: 1,
    standardUncertainty: 1,
    expected: [0, 9].map((mean) => ({ id: String(mean), mean, standardDeviation: 1 })),
  },
  'picture-measure': {
    picture: { widthPx: 400, heightPx: 300 },
    plane: { kind: 'scale bar', bar },
    wanted: { kind: 'distance', points: [bar.from, bar.to] },
    pickPx: 1,
    distortionPx: null,
    offPlane: null,
  },
  'stud-circle': { studs: 5, spacings: [{ mm: 67, step: 1 }], goodToMm: 1, patterns: [] },
  'drum-wear': { readingsMm: [229], goodToMm: 1, sizes: [{ label: 'd', nominalMm: 228.6, limitMm: 230 }] },
  'gap-series': { left: joint, right: joint, goodToMm: 0.5 },
  diagonals: { firstMm: 5, secondMm: 5, widthMm: 3, lengthMm: 4, goodToMm: 1, limitMm: 1 },
  trilateration: {
    from: [
      { label: 'a', xMm: 0, yMm: 0, distanceMm: 5 },
      { label: 'b', xMm: 8, yMm: 0, distanceMm: 5 },
      { label: 'c', xMm: 0, yMm: 6, distanceMm: 5 },
    ],
    uMm: 1,
  },
  'sheet-thickness': { travelTimeUs: 0.4, uTimeUs: 0.01, echoToEcho: true, paintUm: 0, uPaintUm: 0, nominalMm: 1.2 },
  'weld-pitch': { pitchesMm: [30, 31, 32], goodToMm: 0.5, expected: null },
}

it.each(Object.keys(computations) as ComputationName[])(
  '%s takes plain JSON and answers what the contract says',
  (name) => {
    const { about, input, output } = computations[name]
    const question: unknown = input.parse(JSON.parse(JSON.stringify(questions[name])))
    // Each computation is typed by its own contract; the table as a whole is not.
    const found = (compute[name] as (given: unknown) => unknown)(question)
    expect(output.parse(JSON.parse(JSON.stringify(found)))).toEqual(found)
    expect(about).toMatch(/\.$/)
  },
)
