import { goToPlace, openBrowser, settled } from '../../pages/browser.ts'
import { startOnDemonstration } from '../../pages/started-program.ts'

const PRESSES = 25

/** In the page: notes the time from each answer's key until the picture with what follows from it was drawn. */
function noteTimes(): void {
  const times: number[] = []
  const heads = () => [...document.querySelectorAll('section')]
  // How many tells were looked at stands beside its head, and comes with the answer itself.
  const answered = () =>
    heads()
      .find((each) => each.querySelector('h2')?.textContent === 'Looked at')
      ?.querySelector('.section-beside')?.textContent ?? ''
  window.addEventListener(
    'keydown',
    (event) => {
      if (event.key !== 'a') return
      const before = answered()
      const look = () => {
        if (answered() === before) {
          requestAnimationFrame(look)
          return
        }
        const drawn = new MessageChannel()
        drawn.port1.onmessage = () => times.push(performance.now() - event.timeStamp)
        // The change stands before this frame is drawn; the message is heard after it was.
        drawn.port2.postMessage(null)
      }
      requestAnimationFrame(look)
    },
    true,
  )
  Object.assign(window, { answerTimes: times })
}

/** A tell answered by its key on the demonstration car, to the picture of what it can still be; tried, and not kept. */
export async function keyToIdentity() {
  const program = await startOnDemonstration()
  const browser = await openBrowser()
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
    await page.goto(program.address)
    await page.getByRole('navigation', { name: 'Places' }).waitFor()
    await goToPlace(page, '2', 'Identity')
    await page.getByText('What if: answers are tried and not kept').click()
    await settled(page)
    await page.evaluate(noteTimes)
    for (let press = 0; press < PRESSES; press++) {
      await page.keyboard.press('1')
      await page.locator('.tell-value').first().waitFor()
      await settled(page)
      await page.keyboard.press('a')
      await page.waitForFunction(
        (wanted) => (window as unknown as { answerTimes: number[] }).answerTimes.length > wanted,
        press,
      )
      await settled(page)
    }
    const times = await page.evaluate(() => (window as unknown as { answerTimes: number[] }).answerTimes)
    const sorted = times.toSorted((a, b) => a - b)
    const at = (share: number) => sorted[Math.ceil(sorted.length * share) - 1] ?? Number.NaN
    return [
      {
        what: `key of a tell's answer to the picture of what the car can still be, browser, 95th percentile of ${times.length} (median ${at(0.5).toFixed(0)} ms)`,
        ours: `${at(0.95).toFixed(0)} ms`,
        reference: '100 ms',
        ratio: at(0.95) / 100,
        aim: 1,
      },
    ]
  } finally {
    await browser.close()
    await program.stop()
  }
}
