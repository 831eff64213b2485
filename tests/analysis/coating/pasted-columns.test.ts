import { describe, expect, it } from 'vitest'
import { guessedMapping, readLine } from '../../../electron/analysis/coating/pasted-columns.ts'

describe('the likeliest mapping of pasted text', () => {
  it('finds tabs, semicolons and commas between columns, and the decimal sign', () => {
    expect(guessedMapping(['212\t198', '1\t2'])).toMatchObject({ separator: 'tab', decimal: 'point', headed: false })
    expect(guessedMapping(['212,5;198,0', '1;2'])).toMatchObject({ separator: 'semicolon', decimal: 'comma' })
    expect(guessedMapping(['212.5,198', '1,2'])).toMatchObject({ separator: 'comma', decimal: 'point' })
    expect(guessedMapping(['212,5 198', '1 2'])).toMatchObject({ separator: 'spaces', decimal: 'comma' })
  })
  it('takes names of columns from the first line, and leaves out what is no reading', () => {
    const mapping = guessedMapping(['no;x;y;reading mil;remark', '1;100;200;8.1;fine', '2;150;200;8.4;'])
    expect(mapping).toMatchObject({ headed: true, unit: 'mil' })
    expect(mapping.columns).toEqual(['left out', 'across', 'down', 'reading', 'left out'])
  })
})

describe('a line of columns', () => {
  const mapping = {
    separator: 'semicolon',
    decimal: 'point',
    headed: false,
    columns: ['across', 'down', 'reading', 'reading'],
    unit: 'µm',
    placeUnit: 'cm',
  } as const
  const read = (cells: string[], more = {}) => readLine(cells, { ...mapping, columns: [...mapping.columns], ...more })
  const refused = (cells: string[], more = {}): string => {
    const line = read(cells, more)
    return 'refused' in line ? line.refused : 'taken'
  }
  it('keeps values in their order, what lies beyond the gauge and what failed, and places in millimetres', () => {
    expect(read(['10', '20.5', '>2000', '-'])).toEqual({
      values: [{ kind: 'more than', um: 2000 }, { kind: 'no reading' }],
      where: '',
      fromEdgesMm: { x: 100, y: 205 },
    })
  })
  it('reads mil at 25.4 µm each', () => {
    const line = read(['1', '1', '10', ''], { unit: 'mil' })
    expect('values' in line ? line.values : []).toEqual([{ kind: 'value', um: 254 }])
  })
  it('refuses with what to do: other decimal sign, negative, far too much, no number, mixed units, columns, nothing', () => {
    expect(refused(['1', '1', '2,5', ''])).toMatch(/has a decimal comma, and a decimal point is chosen/)
    expect(refused(['1', '1', '-4', ''])).toMatch(/less than nothing/)
    expect(refused(['1', '1', '1e9', ''])).toMatch(/more than any coating/)
    expect(refused(['1', '1', 'NaN', ''])).toMatch(/is no number/)
    expect(refused(['1', '1', '8.1 mil', ''])).toMatch(/another unit than µm/)
    expect(refused(['1', '1', '0.2 mm', ''])).toMatch(/millimetres/)
    expect(refused(['1', '1', '200'])).toMatch(/3 columns where 4 were expected/)
    expect(refused(['', '1', '200', ''])).toMatch(/empty cell/)
    expect(refused(['1', '1', '', ''])).toMatch(/no reading in this line/)
    expect(refused(Array(11).fill('5'), { columns: Array(11).fill('reading') })).toMatch(/11 values/)
  })
})
