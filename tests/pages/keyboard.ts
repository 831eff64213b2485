import type { Page } from 'playwright'

/** Drives a page by keys alone and counts them. It finds a field only by going there with Tab, as a hand would. */
export class Keyboard {
  /** Keys pressed so far, apart from the letters of texts. */
  presses = 0
  private readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      this.presses += 1
      await this.page.keyboard.press(key)
    }
  }

  /** Writes into the field that has the focus; what stood in it is replaced. */
  async write(text: string): Promise<void> {
    await this.page.keyboard.press('Control+a')
    await this.page.keyboard.insertText(text)
  }

  /** Name of what has the focus: its label, as somebody who does not see the page is told it. */
  focusName(): Promise<string> {
    return this.page.evaluate(() => {
      const element = document.activeElement
      if (!(element instanceof HTMLElement)) return ''
      const labelled = (element.getAttribute('aria-labelledby') ?? '')
        .split(' ')
        .map((id) => document.getElementById(id)?.textContent ?? '')
        .join(' ')
        .trim()
      const labels = 'labels' in element ? [...((element as HTMLInputElement).labels ?? [])] : []
      return (
        element.getAttribute('aria-label') ??
        (labelled || labels.map((label) => label.textContent).join(' ') || element.textContent || '')
      ).trim()
    })
  }

  /** Presses Tab until a control of that name has the focus; throws with the names it met when there is none. */
  async tabTo(name: string | RegExp, most = 120): Promise<void> {
    const met: string[] = []
    for (let step = 0; step < most; step++) {
      const here = await this.focusName()
      if (typeof name === 'string' ? here.startsWith(name) : name.test(here)) return
      met.push(here.slice(0, 40))
      await this.press('Tab')
    }
    throw new Error(`Tab does not lead to ${name}. It leads to: ${[...new Set(met)].join(' | ')}`)
  }

  /** Goes to a field with Tab and writes into it. */
  async fill(name: string | RegExp, text: string): Promise<void> {
    await this.tabTo(name)
    await this.write(text)
  }

  /** Goes to a list of choices with Tab and takes one by typing the beginning of its word. */
  async choose(name: string | RegExp, choice: string): Promise<void> {
    await this.tabTo(name)
    await this.press('Enter')
    await this.page.getByRole('listbox').waitFor()
    await this.page.keyboard.type(choice.slice(0, 8))
    await this.press('Enter')
    await this.page.getByRole('listbox').waitFor({ state: 'detached' })
  }
}
