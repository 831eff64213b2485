import { beforeAll, describe, expect, it } from 'vitest'
import { composed, has, textOf } from './composing.ts'
import { contentFixture, recordFixture } from './content-fixture.ts'

describe.skipIf(!has('pdftotext'))('weights in the report', () => {
  let text: string
  beforeAll(async () => {
    const plain = contentFixture(recordFixture())
    const { whole } = plain.judgement
    const judgement = {
      ...plain.judgement,
      whole: {
        ...whole,
        metal: [...whole.metal, { state: 'filler over metal', lowPercent: 4, highPercent: 55, areaM2: 0.4 }],
        originalMetal: { ...whole.originalMetal, lowPercent: 18, highPercent: 74 },
      },
      weightsSet: [
        {
          weighs: 'body area/left side',
          factor: 2.5,
          reason: 'the side the buyer asks about',
          setBy: 'Ada Quill',
          setAt: '2026-11-12T10:00:00.000Z',
          label: 'Left side',
          sort: 'body area',
          things: 14,
        },
      ] as const,
      unweighed: {
        originalMetal: { lowPercent: 31.2, highPercent: 70.4 },
        factoryPaint: { lowPercent: 2, highPercent: 44 },
        parts: null,
      },
    }
    text = textOf((await composed({ ...plain, judgement })).path).replace(/\s+/g, ' ')
  })

  it('are printed with who set them, when and why, and the shares without them', () => {
    expect(text).toMatch(/Left side, body area 2\.5 14 panels Ada Quill, 12 November the side the/)
    expect(text).toContain('Without them the whole car stands at 31 – 71 % original metal, 2 – 44 % factory finish.')
    expect(text).toContain('so there original metal ends lower. The bars count with the weights set; the table counts')
    expect(text).toContain('Parts as fitted at the factory, by count and the weights set.')
  })
})
