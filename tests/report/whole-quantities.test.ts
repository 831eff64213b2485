import { describe, expect, test } from 'vitest'
import { breakLines, measure } from '../../electron/report/layout/line-breaking.ts'
import { styles } from '../../electron/report/layout/text-style.ts'
import { spacesInQuantities } from '../../shared-types/spaces-in-quantities.ts'

const held = (text: string): number[] => [...spacesInQuantities(text)].sort((a, b) => a - b)

const linesOf = (text: string, widthMm: number): string[] =>
  breakLines([{ text, style: styles.text }], widthMm).map(({ parts }) => parts.map(({ words }) => words).join(''))

describe('spaces inside a number', () => {
  test('are those between its thousands', () => {
    expect(held('2 500')).toEqual([1])
    expect(held('costs 12 040 000 in all')).toEqual([8, 12])
    expect(held('2\u2009500')).toEqual([1])
    expect(held('from 1 200 to 2 500.')).toEqual([6, 15])
  })

  test('and before its unit', () => {
    expect(held('grown by 2 000 µm')).toEqual([10, 14])
    expect(held('40 mm wide, 12 minor')).toEqual([2])
  })

  test('are none between a year and a count, a name and a number, or in a row of numbers', () => {
    expect(held('in 1960 250 cars')).toEqual([])
    expect(held('B2 551')).toEqual([])
    expect(held('0.5 125')).toEqual([])
    expect(held('2 5000')).toEqual([])
    expect(held('126 124 125 118 122 119')).toEqual([])
    expect(held('2  500')).toEqual([])
    expect(held('no figure at all')).toEqual([])
  })
})

test('a number is not broken over two lines wherever the line ends, and keeps the space that was typed', () => {
  const text = 'The repair was put at 2 500 by one and at 12 750 by the other.'
  const whole = measure(text, styles.text)
  for (let width = measure('12 750 ', styles.text); width < whole; width += 0.5) {
    const lines = linesOf(text, width)
    expect(lines.join('')).toBe(text)
    for (const number of ['2 500', '12 750']) {
      expect(
        lines.filter((line) => line.includes(number)),
        `${number} at ${width} mm`,
      ).toHaveLength(1)
    }
  }
})
