import type { Page } from 'playwright'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { askThrough } from './asking.ts'
import { goToPlace, settled } from './browser.ts'
import type { Keyboard } from './keyboard.ts'
import { type OpenPage, openPage } from './open-page.ts'
import { startOnDemonstration } from './started-program.ts'

let openedPage: OpenPage
let page: Page
let keyboard: Keyboard
let faults: readonly string[]

beforeAll(async () => {
  openedPage = await openPage(startOnDemonstration, { byKeyboard: true })
  ;({ page, keyboard, faults } = openedPage)
  await goToPlace(page, '6', 'Measuring')
}, 120_000)

afterAll(() => openedPage?.close())

const view = () => askThrough(page, 'record.view', {})
const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, ' ')

async function opened(key: string): Promise<void> {
  await keyboard.press(key)
  await page.locator('.edit-sheet').waitFor()
  await page.waitForFunction(() => document.activeElement?.closest('.edit-sheet') !== null)
  await settled(page)
}
async function gone(): Promise<void> {
  await page.locator('.edit-sheet').waitFor({ state: 'detached' })
  await settled(page)
}
/** Waits until the live result says so. */
async function says(words: string | RegExp): Promise<void> {
  await page.locator('.tape-result').filter({ hasText: words }).waitFor({ timeout: 15_000 })
  await settled(page)
}

type Typed = readonly (readonly [label: string | RegExp, text: string])[]
const kinds: readonly { key: string; title: string; typed: Typed; headline: RegExp; unit: string }[] = [
  {
    key: 's',
    title: 'Stud circle',
    typed: [
      ['Spacings of neighbours', '71.8 71.9 71.8'],
      ['Good to', '0.2'],
    ],
    headline: /101\.59 ± 0\.19.mm/,
    unit: 'mm',
  },
  {
    key: 'd',
    title: 'Drum or disc',
    typed: [
      ['Diameter', '229.1 229.2 229.1'],
      ['Nominal and wear limit', '228.6 230.1'],
      ['Good to', '0.05'],
    ],
    headline: /229\.1\d ± 0\.\d+.mm.*Inside the wear limit/,
    unit: 'mm',
  },
  {
    key: 'g',
    title: 'Gaps and flush',
    typed: [
      ['Left side', '3 4 5'],
      ['Right side', '4 4 4'],
      ['Good to', '0.2'],
    ],
    headline: /left less right 0\.00 ± 0\.19.mm.*left: taper is shown/,
    unit: 'mm',
  },
  {
    key: 'x',
    title: 'Diagonals',
    typed: [
      ['One diagonal', '1500'],
      ['The other', '1500'],
      ['Width', '900'],
      ['Length', '1200'],
      ['Good to', '1'],
    ],
    headline: /difference 0\.0 ± 1\.6.mm.*does not prove a rectangle/,
    unit: 'mm',
  },
  {
    key: 'l',
    title: 'A point from distances',
    typed: [
      ['Known points', 'A 0 0 500; B 1000 0 670.8; rear eye 2 0 800 640.3'],
      ['Good to', '1.5'],
    ],
    headline: /x 400\.0 ± 1\.3.mm, y 300\.0 ± 1\.7.mm.*residual from rear eye 2/,
    unit: 'mm',
  },
  {
    key: 'u',
    title: 'Sheet by ultrasound',
    typed: [
      ['Travel time', '0.5'],
      ['u of the time', '0.005'],
      ['Nominal', '1.2'],
      ['Paint', '150'],
      ['u of the paint', '10'],
    ],
    headline: /1\.12 ± 0\.06.mm.*150.µm taken for metal/,
    unit: 'mm',
  },
  {
    key: 'w',
    title: 'Pitch of welds',
    typed: [
      ['Pitches', '38 40 39 41 40 62'],
      ['Good to', '0.5'],
    ],
    headline: /± \d+.*mm.*Reading 6, 62.mm, stands out/,
    unit: 'mm',
  },
  {
    key: 'r',
    title: 'Repeated readings',
    typed: [
      ['Readings', '10.1 10.4 9.9 10.2 10.4'],
      ['Lower limit', '9'],
      ['Upper limit', '11'],
      ['Good to', '0.05'],
      ['What was measured', 'Width of the waist strip'],
    ],
    headline: /10\.20? ± 0\.\d+.mm.*4 degrees of freedom.*Inside the limits/,
    unit: 'mm',
  },
]

describe.each(kinds)('$title', ({ key, title, typed, headline }) => {
  it('is entered by keyboard alone, answers while it is typed, is kept as an exhibit and undone', async () => {
    const before = await view()
    await opened(key)
    expect(await page.locator('.edit-sheet h2').textContent()).toBe(title)
    for (const [label, text] of typed) await keyboard.fill(label, text)
    await says(headline)
    expect((await view()).journalNumber).toBe(before.journalNumber)
    await keyboard.fill('Where', 'trial piece')
    await keyboard.press('Control+Enter')
    await gone()
    const { exhibits } = await view()
    expect(exhibits).toHaveLength(before.exhibits.length + 1)
    const { measurement, caption, kind } = exhibits.at(-1) ?? {}
    expect(kind).toBe('measurement')
    expect(measurement?.uncertainty).toBeGreaterThan(0)
    expect(measurement?.what).toContain(', trial piece')
    expect(measurement?.method).not.toBe('')
    expect(plain(caption ?? '')).toMatch(/±.*% coverage, k = /)
    await page.locator('.register-row', { hasText: ', trial piece' }).waitFor()
    await keyboard.press('Control+z')
    await page.locator('.register-row', { hasText: ', trial piece' }).waitFor({ state: 'detached' })
    expect((await view()).exhibits).toHaveLength(before.exhibits.length)
  })
})

describe('what cannot be', () => {
  const refused: readonly [what: string, key: string, typed: Typed, words: RegExp][] = [
    [
      'a length of nothing',
      's',
      [
        ['Spacings of neighbours', '0'],
        ['Good to', '1'],
      ],
      /must be greater than nothing/,
    ],
    [
      'a length below nothing',
      's',
      [
        ['Spacings of neighbours', '-70'],
        ['Good to', '1'],
      ],
      /must be greater than nothing/,
    ],
    [
      'a tool good to nothing',
      's',
      [
        ['Spacings of neighbours', '70'],
        ['Good to', '0'],
      ],
      /must be greater than nothing/,
    ],
    [
      'units that contradict each other',
      's',
      [
        ['Spacings of neighbours', '70 mm 2.8 in'],
        ['Good to', '1'],
      ],
      /mm and inches at once/,
    ],
    [
      'no number',
      's',
      [
        ['Spacings of neighbours', '70 seventy'],
        ['Good to', '1'],
      ],
      /“seventy” is no number/,
    ],
    [
      'known points on one line',
      'l',
      [
        ['Known points', 'A 0 0 500; B 1000 0 670; C 2000 0 1628'],
        ['Good to', '1'],
      ],
      /lie on one line/,
    ],
    [
      'a gap below nothing',
      'g',
      [
        ['Left side', '3 -1 2'],
        ['Right side', ''],
        ['Good to', '1'],
      ],
      /where panels touch enter 0/,
    ],
    [
      'a wear limit that is the nominal size',
      'd',
      [
        ['Diameter', '229'],
        ['Nominal and wear limit', '229 229'],
        ['Good to', '1'],
      ],
      /correct one of the two/,
    ],
  ]
  it.each(refused)('%s: a clear sentence, and nothing changed', async (_, key, typed, words) => {
    const before = (await view()).journalNumber
    await opened(key)
    for (const [label, text] of typed) await keyboard.fill(label, text)
    await says(words)
    await keyboard.press('Control+Enter')
    await page.locator('.edit-sheet').getByText(words).first().waitFor()
    expect((await view()).journalNumber).toBe(before)
    await keyboard.press('Escape')
    await gone()
  })
})

describe('with the sheet', () => {
  it('a tie is named, and the measurement is noted of the tell it was compared with', async () => {
    const before = await view()
    await opened('s')
    await keyboard.fill('Spacings of neighbours', '69.6 69.7')
    await keyboard.fill('Good to', '0.5')
    await keyboard.choose(/Compare with the sheet$/, 'Stud')
    await says(/A tie: 4 on 98\.4 mm and 4 × 98 mm are not told apart/)
    await keyboard.tabTo(/note it as measured/)
    await keyboard.press('Space')
    await keyboard.press('Control+Enter')
    await gone()
    const { exhibits, observations } = await view()
    const exhibit = exhibits.at(-1)
    expect(exhibits).toHaveLength(before.exhibits.length + 1)
    expect(observations.find(({ tell }) => tell === 'sedge/stud-circle')).toMatchObject({
      state: 'measured',
      measured: { value: exhibit?.measurement?.value, standardUncertainty: expect.any(Number) },
      exhibits: [exhibit?.number],
    })
    await keyboard.press('Control+z', 'Control+z')
    await expect.poll(async () => (await view()).observations).toEqual(before.observations)
    await expect.poll(async () => (await view()).exhibits).toEqual(before.exhibits)
  })

  it('opens again with all that was read, is corrected, and the tell follows; one undo gives both back', async () => {
    const before = await view()
    await opened('s')
    await keyboard.fill('Spacings of neighbours', '69.6 69.7')
    await keyboard.fill('Good to', '0.5')
    await keyboard.choose(/Compare with the sheet$/, 'Stud')
    await keyboard.tabTo(/note it as measured/)
    await keyboard.press('Space')
    await keyboard.fill('Where', 'bench hub')
    await keyboard.press('Control+Enter')
    await gone()
    const kept = await view()
    await page.locator('.register-row', { hasText: 'bench hub' }).focus()
    await opened('Enter')
    const shown = (label: RegExp) => page.locator('.edit-sheet').getByLabel(label).inputValue()
    expect(await shown(/^Spacings of neighbours/)).toBe('69.6 69.7')
    expect(await shown(/^Where/)).toBe('bench hub')
    expect(await shown(/^What was measured/)).toBe('Stud circle')
    await page
      .locator('.edit-sheet')
      .getByText(/Stud circle of the hubs: the value of this tell comes from here/)
      .waitFor()
    await keyboard.fill('Spacings of neighbours', '71.8 71.9')
    await says(/101\.6 ± 0\.6.mm/)
    await keyboard.press('Control+Enter')
    await gone()
    const corrected = await view()
    const { number = 0, measurement } = corrected.exhibits.at(-1) ?? {}
    expect(corrected.exhibits).toHaveLength(before.exhibits.length + 1)
    expect(measurement?.value).toBeCloseTo(71.85 * Math.SQRT2, 1)
    expect(corrected.observations.find(({ tell }) => tell === 'sedge/stud-circle')?.measured).toEqual({
      value: measurement?.value,
      standardUncertainty: (measurement?.uncertainty ?? 0) / 2,
      from: number,
    })
    await keyboard.press('Control+z')
    await expect.poll(async () => (await view()).exhibits).toEqual(kept.exhibits)
    expect((await view()).observations).toEqual(kept.observations)
    await keyboard.press('Control+z', 'Control+z')
    await expect.poll(async () => (await view()).exhibits).toEqual(before.exhibits)
  })

  it('is read and answered in inches where the record is kept in inches', async () => {
    const { commission } = await view()
    await askThrough(page, 'commission.set', { commission: { ...commission, lengthUnit: 'in' } })
    await opened('s')
    await keyboard.fill('Spacings of neighbours', '2-53/64')
    await keyboard.fill('Good to', '1/64')
    await says(/4\.000 ± 0\.026.in/)
    await keyboard.press('Escape')
    await gone()
    await askThrough(page, 'commission.set', { commission })
  })
})

describe('the whole place', () => {
  it('made no script error, dialog or request to another machine', () => {
    expect(faults).toEqual([])
  })
})
