import { readdirSync, readFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { describe, expect, it } from 'vitest'
import { boundsForm, leastForm, measuredForm, unstatedForm } from '../../renderer/parts-of-page/number-forms.ts'

const renderer = resolve(import.meta.dirname, '../../renderer')
const sources = (readdirSync(renderer, { recursive: true }) as string[])
  .filter((name) => /\.tsx?$/.test(name))
  .map((name) => ({ name, text: readFileSync(join(renderer, name), 'utf8') }))

/** Source without comments and imports, which nobody reads on screen. */
const withoutComments = (text: string): string =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/(^|\s)\/\/.*$/gm, '')
    .replace(/^import .*$/gm, '')

/**
 * Words that stand on screen: text between tags, and what is given to label, name, describe or explain. What stands in angle
 * brackets right behind a name is a type.
 */
function wordsOnScreen(text: string, isPage = true): string[] {
  const plain = withoutComments(text)
  const between = isPage
    ? [...plain.matchAll(/(?<!\w)<[A-Za-z][^<>{}]*>([^<>{}=;]+)</g)].map(([, words = '']) => words)
    : []
  const given = [
    ...plain.matchAll(
      /\b(?:label|head|beside|hint|does|title|name|over|means|words|whenEmpty|aria-label|placeholder)(?:=|: )\{?(["'`])((?:(?!\1).)*)\1/g,
    ),
  ].map(([, , words = '']) => words.replace(/\$\{[^}]*\}/g, ' '))
  return [...between, ...given].filter((words) => /[a-z]{3}/i.test(words))
}

/** The words of programs, for which the workshop has its own. */
const programWords =
  /\b(registers?|command|toggle|settings?|import(?:ed|ing|s)?|export(?:ed|ing|s)?|click|select(?:ed)?|filters?|input|submit|cancel|invalid|null|undefined|rows?|fields?|default|backup|path|folder|hash(?:es)?|verify|load(?:ed|ing)?|pixels?|data|dialog|menu|checkbox|drag)\b/i

describe('words on screen', () => {
  it('are found by the search, and so is a word of programs among them', () => {
    const planted = '<p>Import the file</p>\n<Field label="Default path" />\n{ does: \'toggle the filter\' }'
    expect(wordsOnScreen(planted)).toEqual(['Import the file', 'Default path', 'toggle the filter'])
    expect(wordsOnScreen(planted).every((words) => programWords.test(words))).toBe(true)
    expect(sources.flatMap(({ name, text }) => wordsOnScreen(text, name.endsWith('x'))).length).toBeGreaterThan(300)
  })
  it.each(sources.map(({ name }) => name))('%s speaks as a workshop does', (name) => {
    const text = sources.find((source) => source.name === name)?.text ?? ''
    expect(wordsOnScreen(text, name.endsWith('x')).filter((words) => programWords.test(words))).toEqual([])
  })
})

describe('the forms of numbers', () => {
  it('are three, and each is written in one way', () => {
    expect(measuredForm('101.6', '0.2\u202fmm')).toBe('101.6 ± 0.2\u202fmm (k = 2)')
    expect(unstatedForm('101.6\u202fmm')).toBe('101.6\u202fmm, uncertainty not stated')
    expect(boundsForm(58, 71, '%')).toBe('58 – 71\u202f%')
    expect(boundsForm(1100, 1100, 'GBP')).toBe('1\u202f100\u202fGBP')
    expect([leastForm('2\u202f000', true), leastForm('212', false)]).toEqual(['at least 2\u202f000', '212'])
  })
  it('never mix: ± and the dash between figures are written in one file alone', () => {
    const elsewhere = sources.filter(({ name }) => name !== join('parts-of-page', 'number-forms.ts'))
    const offenders = elsewhere.filter(({ text }) => /±|\} – \$?\{|\d – \d/.test(withoutComments(text)))
    expect(offenders.map(({ name }) => name)).toEqual([])
    expect(/±/.test(withoutComments("const said = '412 ± 38'"))).toBe(true)
  })
})
