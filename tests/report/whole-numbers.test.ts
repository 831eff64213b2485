import { describe, expect, test } from 'vitest'
import { breakLines, measure } from '../../electron/report/layout/line-breaking.ts'
import { styles } from '../../electron/report/layout/text-style.ts'
import { placesInsideNumbers } from '../../electron/report/layout/whole-numbers.ts'

const held = (text: string): number[] => [...(placesInsideNumbers(text) ?? [])].sort((a, b) => a - b)

const linesOf = (text: string, widthMm: number): string[] =>
  breakLines([{ text, style: styles.text }], widthMm).map(({ parts }) => parts.map(({ words }) => words).join(''))

describe('places inside a number', () => {
  test('are those after the spaces between its thousands', () => {
    expect(held('2 500')).toEqual([2])
    expect(held('costs 12 040 000 in all')).toEqual([9, 13])
    expect(held('2\u2009500')).toEqual([2])
    expect(held('from 1 200 to 2 500.')).toEqual([7, 16])
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
