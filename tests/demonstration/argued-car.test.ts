import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { compute } from '../../electron/analysis/computations.ts'
import { type Assessment, assess } from '../../electron/use-cases/assess.ts'
import { previewDocument } from '../../electron/use-cases/report.ts'
import { type RunningProgram, startProgram } from '../../electron/use-cases/running-program.ts'
import { useCases } from '../../electron/use-cases/use-cases.ts'
import { computations } from '../../shared-types/computations.ts'
import { toldPages } from '../report/told-pages.ts'
import { openDemonstration } from './made-once.ts'

/** What the demonstration car argues of its parts, dates and sizes: in the assessment, in the report, and computed anew from the same figures. */
describe('the demonstration car', () => {
  let folder: string
  let program: RunningProgram
  let told: Assessment
  let report: string
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'argued-'))
    program = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
    await openDemonstration(program, join(folder, 'demonstration.wmk'))
    told = JSON.parse(JSON.stringify(await assess(program))) as Assessment
    const { document } = await useCases['report.preview'](program, { paper: 'A4' })
    const pages = await toldPages(readFileSync(previewDocument(program, document)))
    report = pages
      .flat()
      .map(({ text }) => text)
      .join(' ')
      .replaceAll(/\s+/g, ' ')
  }, 400_000)
  afterAll(async () => {
    await program.end()
    rmSync(folder, { recursive: true, force: true })
  })

  const part = (id: string) => {
    const found = told.parts?.parts.find(({ partId }) => partId === id)
    if (found === undefined) throw new Error(`${id} is not judged.`)
    return found
  }
  /** Support of one fact of a part, computed anew from the figures the assessment gives. */
  const supportAnew = (partId: string, factId: string) => {
    const fact = part(partId).facts.find(({ id }) => id === factId)
    const anew = compute['part-support'](
      computations['part-support'].input.parse({
        parts: [
          {
            id: factId,
            label: factId,
            group: null,
            ifFactory: (fact?.ifFactoryPercent ?? Number.NaN) / 100,
            pool: fact?.pool.map(({ label, lowPercent, highPercent, matchingPercent }) => ({
              label,
              low: lowPercent / 100,
              high: highPercent / 100,
              matching: Math.min(100, matchingPercent) / 100,
            })),
          },
        ],
      }),
    )
    return { shown: fact?.support, anew: anew.groups[0] }
  }

  it('has an engine of the right type and the wrong date, found and explained', () => {
    const block = part('engine-block')
    expect(block.suggestion).toBe('right type, wrong date')
    expect(block.dates).toMatchObject([{ asRead: '7 62', from: '1962-07-01', agrees: 'later than the car' }])
    expect(block.because.length).toBeGreaterThan(2)
    const { shown, anew } = supportAnew('engine-block', 'sedge/engine-cast-date')
    expect(anew?.high.supports).toBe('second')
    expect(anew?.high.likelihoodRatio).toBeCloseTo(shown?.high.likelihoodRatio ?? Number.NaN, 9)
    const sheetGrammar = {
      id: 'casting-date',
      label: 'Casting date, month and year',
      source: 'Cars taken apart, notebook 3 (invented)',
      usedFrom: 1956,
      usedTo: 1964,
      elements: [
        { kind: 'figures', field: 'month', minDigits: 1, maxDigits: 2 },
        { kind: 'figures', field: 'year', minDigits: 2, maxDigits: 2 },
      ],
    }
    const read = compute['date-code'](computations['date-code'].input.parse({ asRead: '7 62', grammars: [sheetGrammar] }))
    expect(read.readings.map(({ interval }) => interval)).toEqual([{ from: '1962-07-01', to: '1962-07-31' }])
    expect(report).toMatch(/Cylinder block.*right type, wrong date/)
    expect(report).toContain('7 62')
  })

  it('has a gearbox of another line, found by interchange', () => {
    expect(part('transmission').suggestion).toBe('later fitment')
    expect(told.parts?.interchange.find(({ id }) => id === 'sedge/van-gearbox')).toMatchObject({ match: 'agrees' })
    const { shown, anew } = supportAnew('transmission', 'sedge/gearbox-prefix')
    expect(anew?.low.likelihoodRatio).toBeCloseTo(shown?.low.likelihoodRatio ?? Number.NaN, 9)
    expect(report).toContain('Gearbox: Van gearbox V3')
  })

  it('has another stud circle, with the tie a tape leaves', () => {
    const tie = told.measurements.find(({ what }) => what.startsWith('Stud circle, spare wheel'))
    const possible = tie?.answer.candidates.filter((each) => each.possible).map(({ label }) => label)
    expect(possible).toHaveLength(2)
    expect(tie?.answer.verdict).toMatch(/^A tie: /)
    const kept = program.record().view().exhibits.find(({ number }) => number === tie?.exhibit)?.measurement?.taken
    if (kept?.question.kind !== 'stud circle') throw new Error('The spare wheel was not measured as a stud circle.')
    const { kind: _, ...question } = kept.question
    const patterns = [
      { label: 'one', studs: 4, diameterMm: 98.4 },
      { label: 'other', studs: 4, diameterMm: 98 },
      { label: 'far', studs: 4, diameterMm: 101.6 },
    ]
    const anew = compute['stud-circle'](computations['stud-circle'].input.parse({ ...question, patterns }))
    expect(anew.patterns.filter((each) => each.possible).map(({ label }) => label)).toEqual(['one', 'other'])
    expect(report).toContain(tie?.answer.headline.replaceAll(/\s+/g, ' '))
    expect(report).toContain('A tie: ')
  })

  it('has wing bolts that are not the ones expected, and were undone', () => {
    const [bolts] = told.fastenings
    expect(bolts).toMatchObject({ partId: 'front-side-bolts', differs: 2 })
    const kept = program.record().view().parts.find(({ partId }) => partId === 'front-side-bolts')?.fastening
    expect(compute.fastening(computations.fastening.input.parse(kept)).words).toBe(bolts?.words)
    expect(report).toContain('expected hexagon with washer face')
  })

  it('has a badge that is contradicted', () => {
    expect(part('emblems').support?.high.supports).toBe('second')
    const { shown, anew } = supportAnew('emblems', 'sedge/badges')
    expect(anew?.high.likelihoodRatio).toBeCloseTo(shown?.high.likelihoodRatio ?? Number.NaN, 9)
    expect(report).toMatch(/badges?.*Lantern/i)
  })

  it('has a time line with one smallest conflict', () => {
    const { conflicts, rows, allConflictsFound } = told.timeLine
    expect(allConflictsFound).toBe(true)
    expect(conflicts.map((conflict) => conflict.rows)).toEqual([['car:built', 'part:engine-block']])
    const given = (id: string) => rows.find((row) => row.id === id)?.given.map(({ from, to }) => ({ from, to }))
    const readings = (id: string) => given(id)?.slice(0, 1)
    const anew = compute['time-line'](
      computations['time-line'].input.parse({
        events: [
          { id: 'cast', label: 'block cast' },
          { id: 'built', label: 'car built' },
        ],
        facts: [
          { id: 'block', event: 'cast', label: 'date of the block', readings: readings('part:engine-block'), source: '' },
          { id: 'car', event: 'built', label: 'building', readings: readings('car:built'), source: '' },
        ],
        rules: [
          {
            id: 'born with it',
            before: 'cast',
            after: 'built',
            lead: { minDays: 5, maxDays: 180 },
            label: 'cast 5 to 180 days before',
            source: '',
          },
        ],
      }),
    )
    expect(anew.conflicts.map((set) => set.map(({ id }) => id))).toEqual([['block', 'car', 'born with it']])
    expect(report).toContain('Cylinder block against the building of the car')
  })

  it('has a photograph measured to a stated uncertainty that decides one tell', () => {
    const [spacing] = told.photographMeasures
    expect(spacing?.what).toBe('Spacing of the wiper spindles')
    expect(spacing?.tells).toMatchObject([{ key: 'sedge/wiper-spacing', exactness: { decision: 'decides' } }])
    const { exhibits } = program.record().view()
    const picked = exhibits.find(({ number }) => number === spacing?.exhibit)?.picked
    const photograph = exhibits.find(({ number }) => number === spacing?.photograph)?.photograph
    if (picked == null || photograph == null) throw new Error('The spindles were not picked on a photograph.')
    const { photograph: _, ...question } = picked
    const { widthPx, heightPx, sha256 } = photograph
    const anew = compute['picture-measure'](
      computations['picture-measure'].input.parse({
        ...question,
        picture: { widthPx, heightPx },
        coverage: spacing?.answer.measured.coverage,
        seed: `photograph ${sha256}`,
      }),
    )
    expect(anew.agree).toBe(true)
    expect(anew.value).toBeCloseTo(spacing?.answer.measured.value ?? Number.NaN, 9)
    expect(anew.standard).toBeCloseTo(spacing?.answer.measured.standard ?? Number.NaN, 9)
    const [tell] = spacing?.tells ?? []
    const exactness = compute['tell-exactness'](
      computations['tell-exactness'].input.parse({
        value: anew.value,
        standardUncertainty: anew.standard,
        expected: tell?.values.map(({ id, mean, standardDeviation }) => ({ id, mean, standardDeviation })),
      }),
    )
    expect(exactness.decision).toBe('decides')
    expect(report).toMatch(/Spacing of the wiper spindles.*348\.\d ± 2\.\d mm|Spacing of the wiper spindles.*348 ± \d/)
    expect(report).toMatch(/: it decides for .*times likelier than the next/)
  })

  it('says of the numbers of a car of 1960 that the format of 17 characters does not apply', () => {
    expect(told.numberFormat.applies).toMatch(/does not apply to a car built by/)
    expect(told.numberFormat.numbers).toEqual([])
    expect(report).toContain(told.numberFormat.applies)
  })

  it('says by what its shares of originality are weighed, and by whom', async () => {
    expect(told.judgement).toMatchObject({ weightsSet: [], unweighed: null })
    expect(report).toContain('nothing weighs more because it is dear or in sight')
    await useCases['weight.set'](program, {
      commandId: crypto.randomUUID(),
      draft: { weighs: 'layer/outer', factor: 2, reason: 'what a buyer sees' },
    })
    const weighed = (await assess(program)).judgement
    expect(weighed.unweighed?.originalMetal.lowPercent).toBeCloseTo(told.judgement.whole.originalMetal.lowPercent, 9)
    expect(weighed.whole.originalMetal).not.toEqual(told.judgement.whole.originalMetal)
    await useCases['journal.undo'](program, { commandId: crypto.randomUUID() })
  })
})
