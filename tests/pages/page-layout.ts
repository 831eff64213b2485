import type { Page } from 'playwright'

/** Boxes of a page's headings, parts, drawings and runs of text: whole px and first words, a line for each. */
export function layoutOf(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const lines: string[] = []
    for (const element of document.querySelectorAll<HTMLElement>('body *')) {
      if (element.closest('svg') !== null && element.tagName !== 'svg') continue
      const isPart = /^(H[1-6]|NAV|MAIN|ASIDE|SECTION|HEADER|TABLE|IMG|svg)$/.test(element.tagName)
      const words = [...element.childNodes]
        .filter((node) => node.nodeType === Node.TEXT_NODE)
        .map((node) => node.textContent?.trim() ?? '')
        .join(' ')
        .trim()
      if ((!isPart && words === '') || getComputedStyle(element).clipPath === 'inset(50%)') continue
      const { x, y, width, height } = element.getBoundingClientRect()
      const isOut = width === 0 || x > innerWidth || y > innerHeight || x + width < 0 || y + height < 0
      if (isOut || getComputedStyle(element).visibility === 'hidden') continue
      const box = [x, y, width, height].map(Math.round).join(' ')
      lines.push(`${box} ${element.tagName.toLowerCase()} ${words.slice(0, 24)}`.trimEnd())
    }
    return lines
  })
}

/** How far a box may move between two browsers, px: rounding of letters' widths adds up to no more. */
const MAY_MOVE_PX = 2

/** What is not where it was: lines that are gone, new, or whose box moved. */
export function movedBoxes(reference: readonly string[], now: readonly string[]): readonly string[] {
  const parsed = (line: string) => {
    const [x = '', y = '', width = '', height = '', ...what] = line.split(' ')
    return { box: [x, y, width, height].map(Number), what: what.join(' ') }
  }
  if (reference.length !== now.length) {
    const known = new Set(reference.map((line) => parsed(line).what))
    const shown = new Set(now.map((line) => parsed(line).what))
    return [
      `${reference.length} boxes before, ${now.length} now`,
      ...[...known].filter((what) => !shown.has(what)).map((what) => `gone: ${what}`),
      ...[...shown].filter((what) => !known.has(what)).map((what) => `new: ${what}`),
    ]
  }
  return reference.flatMap((line, place) => {
    const [before, after] = [parsed(line), parsed(now[place] ?? '')]
    const far = before.box.some((edge, side) => !(Math.abs(edge - (after.box[side] ?? Number.NaN)) <= MAY_MOVE_PX))
    return far || before.what !== after.what ? [`${line} -> ${now[place]}`] : []
  })
}
