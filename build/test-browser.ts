import { installedBrowser, programOnPath } from '../electron/doors/opening/installed-browser.ts'

/** Debian's name, of the package and of the file, for Chromium without windows of its own. */
const HEADLESS_SHELL = 'chromium-headless-shell'

/**
 * Path of the browser the tests drive; empty when playwright's own is to be used. Chromium without windows comes first,
 * as playwright itself prefers it: one that draws windows nobody sees took the tests two to three times as long.
 */
export function browserForTests(): string {
  return programOnPath(HEADLESS_SHELL) ?? installedBrowser() ?? ''
}

/** Packages of Debian that bring a browser for the tests, the better one first; none where that one is there. */
export const debianBrowsers = (): readonly string[] =>
  programOnPath(HEADLESS_SHELL) === null ? [HEADLESS_SHELL, 'chromium'] : []
