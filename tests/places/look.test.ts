import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve, sep } from 'node:path'
import { describe, expect, it } from 'vitest'
import {
  cividis,
  lineWeights,
  printedInks,
  type SheetName,
  sheetLineFactor,
  sheets,
  sheetTypeFactor,
  TOUCH_TARGET_PX,
  typeScale,
  windowWidths,
} from '../../shared-types/tokens.ts'

const channel = (hex: string, place: number): number => {
  const share = Number.parseInt(hex.slice(1 + 2 * place, 3 + 2 * place), 16) / 255
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
}
/** Relative luminance and contrast ratio as WCAG 2.2 defines them under "relative luminance" and "contrast ratio". */
const luminance = (hex: string): number =>
  0.2126 * channel(hex, 0) + 0.7152 * channel(hex, 1) + 0.0722 * channel(hex, 2)
const contrast = (one: string, other: string): number => {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}

describe('contrast', () => {
  it('is reckoned as in WCAG 2.2: black on white 21, #777777 on white 4.47 (Understanding 1.4.3)', () => {
    expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21, 9)
    expect(Math.floor(100 * contrast('#777777', '#FFFFFF')) / 100).toBe(4.47)
  })
  it.each(Object.keys(sheets) as SheetName[])(
    'of words on the %s sheet is at least 7 to 1 (WCAG 2.2, 1.4.6)',
    (name) => {
      const { sheet, ink, ink2, accent } = sheets[name]
      for (const words of [ink, ink2, accent]) expect(contrast(words, sheet)).toBeGreaterThanOrEqual(7)
    },
  )
  it.each(Object.keys(sheets) as SheetName[])(
    'of what carries meaning on the %s sheet is at least 3 to 1 (1.4.11)',
    (name) => {
      const { sheet, ink, ink2, faint, accent } = sheets[name]
      for (const mark of [ink, ink2, faint, accent]) expect(contrast(mark, sheet)).toBeGreaterThanOrEqual(3)
    },
  )
  it('of the outdoor sheet holds for its hairlines too, and it is pure white and black', () => {
    expect(contrast(sheets.outdoor.hairline, sheets.outdoor.sheet)).toBeGreaterThanOrEqual(3)
    expect([sheets.outdoor.sheet, sheets.outdoor.ink]).toEqual(['#FFFFFF', '#000000'])
  })
  it('of the printed inks is at least 7 to 1 for words and 3 to 1 for lines', () => {
    for (const ink of [printedInks.ink, printedInks.soft, printedInks.accent]) {
      expect(contrast(ink, printedInks.paper)).toBeGreaterThanOrEqual(7)
    }
    expect(contrast(printedInks.hair, printedInks.paper)).toBeGreaterThanOrEqual(3)
  })
})

describe('sizes', () => {
  it('keep what must be read at 11.5 px or more; only ruler figures and small capitals go below', () => {
    const small = Object.entries(typeScale).filter(([, [size]]) => size < 11.5)
    expect(small.map(([name]) => name)).toEqual(['caps', 'ruler'])
    expect(typeScale.ruler[0]).toBe(10.5)
  })
  it('grow in sunlight: words by at least a tenth, lines by two fifths', () => {
    expect(sheetTypeFactor.outdoor).toBeGreaterThanOrEqual(1.1)
    expect(sheetLineFactor.outdoor).toBeCloseTo(1.4, 9)
    expect(lineWeights.form.px * sheetLineFactor.outdoor).toBeGreaterThan(0.5)
  })
  it('bring running text to 15 on 21 on a large screen', () => {
    const [size, line] = typeScale.text
    expect(size * windowWidths.wide.type).toBeCloseTo(15, 9)
    expect(line * windowWidths.wide.line).toBeCloseTo(21, 9)
    expect(TOUCH_TARGET_PX).toBe(44)
  })
})

describe('cividis', () => {
  // Nuñez, Anderton and Renslow 2018 (PLoS ONE 13(7) e0199239), table of 256 colours as matplotlib carries it, rows 0, 51, 102, …
  const published = [
    [0, 0.0, 0.135112, 0.304751],
    [3, 0.208926, 0.272546, 0.424809],
    [6, 0.401418, 0.41179, 0.440708],
    [9, 0.582087, 0.55867, 0.468118],
    [12, 0.785965, 0.720438, 0.399613],
    [15, 0.995737, 0.909344, 0.217772],
  ] as const
  it.each(published)('step %i is the published colour', (step, ...rgb) => {
    const hex = rgb.map((share) =>
      Math.round(255 * share)
        .toString(16)
        .padStart(2, '0'),
    )
    expect(cividis[step]?.toLowerCase()).toBe(`#${hex.join('')}`)
  })
  it('grows lighter with every step', () => {
    const light = cividis.map(luminance)
    expect(light.every((here, step) => step === 0 || here > (light[step - 1] ?? 1))).toBe(true)
  })
})

const top = resolve(import.meta.dirname, '../..')
const filesUnder = (folder: string, end: RegExp): string[] =>
  (readdirSync(join(top, folder), { recursive: true }) as string[])
    .filter((name) => end.test(name))
    .map((name) => join(folder, name))

const literalColour =
  /#[0-9a-f]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\(|\b(?:black|white|gr[ae]y|red|blue|green)\b/i
/** What a declaration may not say in figures, by property: sizes of type, weights, and widths of lines and spaces. */
const rules: readonly (readonly [RegExp, RegExp])[] = [
  [
    /^(?:font|font-size|line-height|letter-spacing)$/,
    /(?<![\w.-])[\d.]+(?:px|em|rem|pt)|(?<![\w.-])(?:[1-9]\d*|\d*\.\d+)(?![\w.%]|em)/,
  ],
  [/^font-weight$/, /\d/],
  [/^(?:border|outline|box-shadow|stroke-width|text-decoration-thickness)/, /(?<![\w.-])[\d.]*[1-9][\d.]*px/],
  [/^(?:padding|margin|gap|row-gap|column-gap)/, /(?<![\w.-])[\d.]*[1-9][\d.]*px/],
]

/** Declarations of a style sheet that say in figures or colours what the tokens say. */
function strayLiterals(css: string): string[] {
  const plain = css.replace(/\/\*[\s\S]*?\*\//g, '').replace(/@font-face\s*\{[^}]*\}/g, '')
  return [...plain.matchAll(/([a-z-]+)\s*:\s*([^;{}]+);/g)].flatMap(([whole, property = '', value = '']) => {
    // Each token's own share of itself, such as a half or the negative of a space, is still that token.
    const bare = value
      .replace(/calc\((?:[^()]|\([^()]*\))*var\((?:[^()]|\([^()]*\))*\)/g, 'var')
      .replace(/var\(--[\w-]+\)/g, 'var')
    const stray = rules.some(([names, figures]) => names.test(property) && figures.test(bare))
    return stray || literalColour.test(bare) ? [whole] : []
  })
}

describe('style sheets', () => {
  it('are searched by a search that finds planted literals', () => {
    const planted = [
      'color: #fff;',
      'font-size: 13px;',
      'font-weight: 600;',
      'border: 1px solid var(--ink);',
      'padding: 3px 0;',
      'font: 600 12px/1.2 var(--words);',
      'line-height: 1.4;',
      'stroke-width: 0.7px;',
      'background: white;',
    ]
    for (const line of planted) expect(strayLiterals(`.a { ${line} }`), line).toHaveLength(1)
    const sound = [
      'color: var(--ink);',
      'padding: 0 var(--space-2);',
      'margin: calc(-1 * var(--space-4));',
      'line-height: 0;',
      'font: var(--strong) var(--text-size) / var(--text-line) var(--words);',
      'font-size: calc(1em * var(--figure-share));',
    ]
    for (const line of sound) expect(strayLiterals(`.a { ${line} }`), line).toEqual([])
  })
  it.each(filesUnder('renderer', /\.css$/))('%s takes colours, type, lines and spaces from the tokens', (file) => {
    expect(strayLiterals(readFileSync(join(top, file), 'utf8'))).toEqual([])
  })
  it('no class is ruled by the sheets of two places, whose order depends on where a reader went first', () => {
    const ruledBy = new Map<string, Set<string>>()
    for (const file of filesUnder('renderer', /\.css$/)) {
      const from = file.split(sep)[1] === 'look' ? 'look' : (file.split(sep)[2] ?? '')
      for (const [, name = ''] of readFileSync(join(top, file), 'utf8').matchAll(/^\s*\.([\w-]+)(?= \{|,$)/gm)) {
        ruledBy.set(name, (ruledBy.get(name) ?? new Set()).add(from))
      }
    }
    const twice = [...ruledBy].filter(([, from]) => [...from].filter((place) => place !== 'look').length > 1)
    expect(twice.map(([name]) => name)).toEqual([])
    expect(ruledBy.size).toBeGreaterThan(150)
  })
  it('the page names no colour in its scripts, and its mark has the accent of paper', () => {
    for (const file of filesUnder('renderer', /\.tsx?$/)) {
      expect(readFileSync(join(top, file), 'utf8').match(/['"`]#[0-9a-f]{3,8}['"`]|rgba?\(/i), file).toBeNull()
    }
    expect(readFileSync(join(top, 'renderer/look/mark.svg'), 'utf8')).toContain(sheets.paper.accent)
  })
})
