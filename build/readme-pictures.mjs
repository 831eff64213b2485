#!/usr/bin/env node
// Makes the pictures of the README from the demonstration: the walk-round as the page shows it, and a page of its report.
// Needs the built program, the demonstration (npm run demo -- --no-window), Chromium and pdftoppm. Run when the look changes.
import { execFileSync, spawn } from 'node:child_process'
import { mkdir, readFile, rm } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright'
import sharp from 'sharp'

const top = fileURLToPath(new URL('..', import.meta.url))
const folder = `${top}resources/readme`
const demonstration = process.argv[2] ?? `${top}demonstration`
const { installedBrowser } = await import(`${top}.built/installed-browser.mjs`)

/** A picture of few colours, small enough for a page that is read over a slow line. */
const write = (picture, name) => sharp(picture).png({ palette: true, colours: 64 }).toFile(`${folder}/${name}.png`)

/** Opens the page on the demonstration and answers its address and how to end it. */
async function startPage() {
  const words = ['open', '--page', '--no-browser', '--records', demonstration, `${demonstration}/demonstration.wmk`]
  const child = spawn(process.execPath, [`${top}.built/command.mjs`, ...words], { stdio: ['pipe', 'pipe', 'inherit'] })
  for await (const piece of child.stdout) {
    const address = /http:\S+/.exec(String(piece))?.[0]
    if (address !== undefined) return { address, stop: () => child.kill() }
  }
  throw new Error('The program ended before it gave an address.')
}

async function walkRound() {
  const program = await startPage()
  const browser = await chromium.launch({ executablePath: installedBrowser() ?? undefined, args: ['--no-sandbox'] })
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1.5 })
    await page.goto(program.address)
    await page.getByRole('navigation', { name: 'Places' }).waitFor()
    await page.keyboard.press('Alt+3')
    await page.getByText(/in hand \d+ of/).waitFor()
    await page.waitForLoadState('networkidle').catch(() => undefined)
    await page.waitForTimeout(1500)
    await write(await page.screenshot(), 'walk-round')
  } finally {
    await browser.close()
    program.stop()
  }
}

/** The first page of the report with the body plan on it. */
async function reportPage() {
  const report = `${demonstration}/demonstration.pdf`
  const pages = execFileSync('pdftotext', [report, '-'], { encoding: 'utf8' }).split('\f')
  const found = pages.findIndex((text) => /Left side/i.test(text) && /Rear/.test(text) && /\bFigure\b/.test(text))
  const number = String(found < 0 ? 1 : found + 1)
  const drawn = `${folder}/page`
  execFileSync('pdftoppm', ['-r', '110', '-f', number, '-l', number, '-png', '-singlefile', report, drawn])
  await write(await readFile(`${drawn}.png`), 'report-page')
  await rm(`${drawn}.png`)
}

await mkdir(folder, { recursive: true })
await walkRound()
await reportPage()
