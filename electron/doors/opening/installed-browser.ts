import { accessSync, constants } from 'node:fs'
import { delimiter, join } from 'node:path'

const linuxNames = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'brave-browser',
]
const macApplications = ['Chromium', 'Google Chrome', 'Microsoft Edge', 'Brave Browser']
const windowsFiles = [
  ['Chromium', 'Application', 'chrome.exe'],
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
]

/** Where a browser may lie on this kind of machine, likeliest first. */
function places(platform: NodeJS.Platform, environment: NodeJS.ProcessEnv): string[] {
  if (platform === 'darwin') return macApplications.map((name) => `/Applications/${name}.app/Contents/MacOS/${name}`)
  if (platform === 'win32') {
    const folders = [environment.ProgramFiles, environment['ProgramFiles(x86)'], environment.LOCALAPPDATA]
    return windowsFiles.flatMap((file) => folders.flatMap((folder) => (folder ? [join(folder, ...file)] : [])))
  }
  return onPath(linuxNames, environment)
}

const onPath = (names: readonly string[], environment: NodeJS.ProcessEnv): string[] => {
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '')
  return names.flatMap((name) => folders.map((folder) => join(folder, name)))
}

function canRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK)
    return true
  } catch {
    return false
  }
}

/** Path of a program that can be run, of this name, in one of the folders of the path; null when there is none. */
export function programOnPath(name: string, environment: NodeJS.ProcessEnv = process.env): string | null {
  return onPath([name], environment).find(canRun) ?? null
}

/** Path of an installed browser of the Chromium family, which can show one page as a window of its own; null when there is none. */
export function installedBrowser(
  platform: NodeJS.Platform = process.platform,
  environment: NodeJS.ProcessEnv = process.env,
): string | null {
  return places(platform, environment).find(canRun) ?? null
}
