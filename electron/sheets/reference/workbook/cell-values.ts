import { readXml } from './read-xml.ts'

/** Built-in number formats that show a day (ECMA-376 part 1, 18.8.30). */
const dayFormats: ReadonlySet<number> = new Set([14, 15, 16, 17, 22])
/** A format of one's own that shows a day: with a year or a day in it, quoted words and bracketed conditions left out. */
const showsDay = (code: string): boolean => /[yd]/i.test(code.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ''))

/** By position in the list of cell formats: whether a number in such a cell is a day. */
export function dayStyles(styles: string | undefined): readonly boolean[] {
  if (styles === undefined) return []
  const own = new Map<number, string>()
  const found: boolean[] = []
  let within = ''
  readXml(styles, {
    opens: ({ name, attributes }) => {
      if (name === 'cellXfs' || name === 'cellStyleXfs') within = name
      if (name === 'numFmt') own.set(Number(attributes.numFmtId), attributes.formatCode ?? '')
      if (name !== 'xf' || within !== 'cellXfs') return
      const format = Number(attributes.numFmtId ?? 0)
      found.push(dayFormats.has(format) || showsDay(own.get(format) ?? ''))
    },
    closes: (name) => {
      if (name === within) within = ''
    },
  })
  return found
}

const MS_PER_DAY = 86_400_000
/** Day 0 of the two ways to count days (ECMA-376 part 1, 18.17.4.1); the first counts a 29 February 1900 that never was. */
const DAY_ZERO = { from1900: Date.UTC(1899, 11, 30), from1904: Date.UTC(1904, 0, 1) } as const

/** A day as workbooks count them, as `1958-03-01`. */
export function dayOfSerial(serial: number, counted: keyof typeof DAY_ZERO): string {
  const days = counted === 'from1900' && serial < 60 ? Math.floor(serial) + 1 : Math.floor(serial)
  return new Date(DAY_ZERO[counted] + days * MS_PER_DAY).toISOString().slice(0, 10)
}

/** A number as one would write it: workbooks keep fifteen digits, and what is beyond them is rounding. */
export const plainNumber = (written: string): string => {
  const number = Number(written)
  return written.trim() === '' || Number.isNaN(number) ? written : String(Number(number.toPrecision(15)))
}
