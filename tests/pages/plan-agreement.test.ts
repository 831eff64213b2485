import { execFileSync } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser } from 'playwright'
import sharp, { type Sharp } from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { bodyPlan } from '../../electron/figures/body-plan.ts'
import { planMarks } from '../../electron/figures/plan-marks.ts'
import { printedSheet } from '../../electron/report/drawing/printed-sheet.ts'
import { pageGeometry } from '../../electron/report/layout/page-geometry.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import { startProgram } from '../../electron/use-cases/running-program.ts'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { MM_PER_HATCH_PIXEL } from '../../shared-types/tokens.ts'
import { openDemonstration } from '../demonstration/made-once.ts'
import { composed, has } from '../report/composing.ts'
import { contentFixture } from '../report/content-fixture.ts'
import { servePlan } from './drawn-plan.ts'
import { browserOfWorker } from './open-page.ts'

/** Fine enough that the thinnest hatch stroke, 0.1 mm, covers four fifths of a dot. */
const DOTS_PER_INCH = 200
const DOTS_PER_MM = DOTS_PER_INCH / 25.4
/** Margins of the drawing on screen, as in its scale. */
const MARGIN = { left: 40, right: 20, top: 24, bottom: 34 }

interface Ink {
  readonly width: number
  readonly height: number
  /** Darkness of each dot, 0 to 1. */
  readonly dots: Float32Array
}

async function inkOf(picture: Sharp): Promise<Ink> {
  const { data, info } = await picture
    .flatten({ background: '#fff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true })
  const paper = [...data].sort((a, b) => a - b)[Math.floor(data.length * 0.9)] ?? 255
  return {
    width: info.width,
    height: info.height,
    dots: Float32Array.from(data, (value) => Math.max(0, 1 - value / paper)),
  }
}
const at = (ink: Ink, x: number, y: number): number =>
  x < 0 || y < 0 || x >= ink.width || y >= ink.height ? 0 : (ink.dots[y * ink.width + x] ?? 0)

/** A dot is ink from here on; a thinner line that falls between two rows of dots still reaches it. */
const INK = 0.3
/** What counts as ink answering it in the other picture, this near: 1.5 dots are 0.19 mm on the page. */
const ANSWER = 0.1
const NEAR_DOTS = 1.5

function isAnswered(other: Ink, x: number, y: number): boolean {
  for (let dy = -1; dy <= 1; dy++) {
    for (let dx = -1; dx <= 1; dx++) {
      if (Math.hypot(dx, dy) <= NEAR_DOTS && at(other, x + dx, y + dy) > ANSWER) return true
    }
  }
  return false
}

/** Squares of the page, side by side, mm; a mark that differs on one panel fills at least one of them. */
const SQUARE_MM = 8

/** The worst share of a square's ink that the other picture does not answer, and where; squares with little ink are left out. */
function worstSquare(one: Ink, other: Ink) {
  const side = Math.round(SQUARE_MM * DOTS_PER_MM)
  let worst = { share: 0, xMm: 0, yMm: 0 }
  for (let top = 0; top < one.height; top += side / 2) {
    for (let left = 0; left < one.width; left += side / 2) {
      let [inked, alone] = [0, 0]
      for (let y = Math.floor(top); y < top + side; y++) {
        for (let x = Math.floor(left); x < left + side; x++) {
          if (at(one, x, y) < INK) continue
          inked += 1
          if (!isAnswered(other, x, y)) alone += 1
        }
      }
      if (inked > 120 && alone / inked > worst.share) {
        worst = { share: alone / inked, xMm: left / DOTS_PER_MM, yMm: top / DOTS_PER_MM }
      }
    }
  }
  return worst
}

let folder: string
let browser: Browser
let record: RecordView
let figure: PlanFigure
let sheet: PlanSheet
let marks: PlanMarks
/** 1 : 40 on the page, and the scale on screen at which one pixel is what one pixel of a hatch is in print. */
const PRINTED = 40
const pixelsPerMm = 1 / (PRINTED * MM_PER_HATCH_PIXEL)

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'agreement-'))
  const maker = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
  await openDemonstration(maker, join(folder, 'demonstration.wmk'))
  record = maker.record().view()
  await maker.end()
  const { particulars, commission } = record
  figure = bodyPlan(particulars.body, commission.names, particulars.dimensions, particulars.conditions)
  const outside = figure.sheets.find(({ id }) => id === 'outside')
  if (outside === undefined) throw new Error('The plan has no outside.')
  const printed = printedSheet(outside)
  if (printed.scale !== PRINTED) throw new Error(`The page draws the sheet 1 : ${printed.scale}.`)
  // As the page arranges its views: the drawing is what is compared.
  sheet = printed.sheet
  const { panels } = panelList(particulars.body, commission.level, particulars.conditions)
  marks = {
    ...planMarks({ sheet, record, definitions: panels, names: commission.names, pixelsPerMm, inHand: null }),
    // The page marks neither exhibits nor spots on the plan, and its rings are larger; those are tested elsewhere.
    ...{ places: [], callouts: [], captions: [] },
  }
  browser = await browserOfWorker()
}, 120_000)
afterAll(async () => {
  await rm(folder, { recursive: true, force: true })
})

/** The sheet as the screen draws it, one dot for one dot of the page. */
async function onScreen(drawn: PlanMarks): Promise<Ink> {
  const room = {
    width: sheet.widthMm * pixelsPerMm + MARGIN.left + MARGIN.right,
    height: sheet.heightMm * pixelsPerMm + MARGIN.top + MARGIN.bottom,
  }
  const served = await servePlan({ figure, sheet, marks: drawn, maps: [], room })
  const page = await browser.newPage({
    viewport: { width: Math.ceil(room.width), height: Math.ceil(room.height) },
    deviceScaleFactor: MM_PER_HATCH_PIXEL * DOTS_PER_MM,
  })
  try {
    await page.goto(served.address)
    await page.waitForFunction(() => 'measureRedraws' in window)
    await page.addStyleTag({ content: '.measures { display: none }' })
    const shot = await page.screenshot({
      clip: { x: MARGIN.left, y: MARGIN.top, width: sheet.widthMm * pixelsPerMm, height: sheet.heightMm * pixelsPerMm },
    })
    return await inkOf(sharp(shot))
  } finally {
    await page.close()
    served.stop()
  }
}

/** The page of the report that draws the sheet, whole. */
async function onPage(drawn: PlanMarks): Promise<Ink> {
  const content = contentFixture({ ...record, exhibits: [] }, { plan: figure, marks: { outside: drawn } })
  const { path } = await composed(content)
  const text = execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' }).split('\f')
  const number = text.findIndex((words) => words.includes(`${sheet.name}, 1 : ${PRINTED}`)) + 1
  if (number === 0) throw new Error(`No page draws the sheet 1 : ${PRINTED}.`)
  const words = ['-r', String(DOTS_PER_INCH), '-f', String(number), '-l', String(number), '-png', path]
  return inkOf(sharp(execFileSync('pdftoppm', words, { maxBuffer: 1 << 28 })))
}

/** The part of the page on which the drawing lies best, to a dot: the page may stand it where its text wants it. */
function figureOf(page: Ink, screen: Ink): Ink {
  const sample: [number, number][] = []
  for (let y = 0; y < screen.height; y += 3) {
    for (let x = 0; x < screen.width; x += 3) if (at(screen, x, y) > 0.6) sample.push([x, y])
  }
  const some = sample.filter((_, index) => index % Math.ceil(sample.length / 1500) === 0)
  let best = { score: -1, left: 0, top: 0 }
  const left = Math.round(pageGeometry('A4').leftMm * DOTS_PER_MM)
  for (let top = 0; top + screen.height < page.height; top++) {
    for (let dx = -2; dx <= 2; dx++) {
      const score = some.filter(([x, y]) => at(page, x + left + dx, y + top) > 0.3).length
      if (score > best.score) best = { score, left: left + dx, top }
    }
  }
  const dots = new Float32Array(screen.width * screen.height)
  for (let y = 0; y < screen.height; y++) {
    for (let x = 0; x < screen.width; x++) dots[y * screen.width + x] = at(page, x + best.left, y + best.top)
  }
  return { width: screen.width, height: screen.height, dots }
}

describe.skipIf(!has('pdftoppm'))('the plan of the demonstration on screen and on the page', () => {
  /**
   * Strokes differ by up to 0.13 mm in weight, so dots at the rims of heavy lines and at ends of hatch strokes stand alone:
   * measured, 0.07 of the ink of the worst square. A hatch taken for another of like direction leaves 0.3 alone, a
   * hatch left out 0.7. The limit lies midway in ratio.
   */
  const MOST_ALONE = 0.15

  it('has the same ink at the same places, either way', async () => {
    const screen = await onScreen(marks)
    const page = figureOf(await onPage(marks), screen)
    const [there, back] = [worstSquare(screen, page), worstSquare(page, screen)]
    expect(there.share).toBeLessThan(MOST_ALONE)
    expect(back.share).toBeLessThan(MOST_ALONE)
  }, 120_000)

  it('a panel left without its mark on the page is noticed', async () => {
    const screen = await onScreen(marks)
    const without = marks.panels.map((mark) =>
      mark.panelId === 'front-side.L' ? { ...mark, hatch: 'clean' as const } : mark,
    )
    const page = figureOf(await onPage({ ...marks, panels: without }), screen)
    expect(worstSquare(screen, page).share).toBeGreaterThan(MOST_ALONE)
  }, 120_000)

  it('a hatch taken for another on the page is noticed', async () => {
    const screen = await onScreen(marks)
    const other = marks.panels.map((mark) =>
      mark.panelId === 'front-side.L' ? { ...mark, hatch: 'repaired' as const } : mark,
    )
    const page = figureOf(await onPage({ ...marks, panels: other }), screen)
    expect(worstSquare(screen, page).share).toBeGreaterThan(MOST_ALONE)
  }, 120_000)
})
