import axe from 'axe-core'
import type { Page } from 'playwright'

/** Rules that judge colours and sizes, which may differ where the markup is the same; all others judge the markup. */
const rulesOfLook = ['color-contrast', 'link-in-text-block', 'scrollable-region-focusable']

interface WithAxe {
  readonly axe: typeof axe
  /** The markup all rules were last asked of, each text by whether it says anything. */
  judged?: string
}

/**
 * What axe-core objects to on the page as it stands: each rule, what it wants and the elements it was broken by. Where the
 * markup is still the one all its rules have judged, as on another sheet, those that judge the look are asked alone.
 */
export async function axeViolations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source)
  return page.evaluate(async (ofLook) => {
    const here = window as unknown as WithAxe
    const { body } = document
    const markup = `${innerWidth} ${body.outerHTML.replace(/>[^<]*[^<\s][^<]*</g, '>words<')}`
    const only = markup === here.judged ? { runOnly: { type: 'rule' as const, values: ofLook } } : {}
    const said = await here.axe.run(document, { resultTypes: ['violations'], ...only })
    here.judged = markup
    return said.violations.map(
      ({ id, help, nodes }) =>
        `${id}: ${help}: ${nodes.map((node) => `${node.target} ${node.html.slice(0, 160)}`).join(' | ')}`,
    )
  }, rulesOfLook)
}
