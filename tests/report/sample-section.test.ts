import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { answerSample } from '../../electron/use-cases/sample-taken.ts'
import type { SampleTaken } from '../../shared-types/fastening-sample.ts'
import { composed } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'
import { toldPages } from './told-pages.ts'

describe('a random sample of fastenings in the report', () => {
  let text: string
  const plan = {
    what: 'Wing bolts with a wrong head',
    ofHowMany: 24,
    confidencePercent: 95,
    wantedAtMost: 3,
    positions: [],
    seed: 'first sample',
  }
  const drawn = answerSample({ ...plan, seen: [] }).positions
  const [first = '', second = ''] = drawn
  const seen: SampleTaken['seen'] = [
    { position: first, wrong: true },
    { position: second, wrong: false },
  ]
  const sample: SampleTaken = { ...plan, seen }
  const answer = answerSample(sample)
  beforeAll(async () => {
    const content = contentFixture(recordFixture(), { samples: [{ exhibit: 4, sample, answer }] })
    const pages = await toldPages(readFileSync((await composed(content)).path))
    const told = pages.flat().map((each) => each.text)
    text = told.join(' ').replace(/\s+/g, ' ')
  })

  it('stands with what it says of all, how, which were drawn by what, and which were wrong and right', () => {
    expect(text).toContain('Wing bolts with a wrong head')
    expect(text.replaceAll(' ', '')).toContain((answer.bound?.words ?? 'no bound').replace(/\s+/g, ''))
    expect(text).toContain('hypergeometric')
    expect(text).toContain(`${drawn.length - 2} of them not looked at, so the bounds hold if it is chance which`)
    expect(text).toContain(`wrong ${first}.`)
    expect(text).toContain(`right ${second}.`)
    for (const position of drawn) expect(text).toMatch(new RegExp(`\\b${position}\\b`))
  })

  it('never speaks of all where only some were seen', () => {
    expect(answer.bound?.words).toMatch(/\d/)
    expect(answer.bound?.words).not.toMatch(/^all /i)
  })
})
