import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Folder of the program: the nearest one upwards whose package.json bears its name, in source and in a bundle alike. */
function programFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  for (;;) {
    const manifest = join(folder, 'package.json')
    if (
      existsSync(manifest) &&
      (JSON.parse(readFileSync(manifest, 'utf8')) as { name?: string }).name === 'witnessmark'
    ) {
      return folder
    }
    const above = dirname(folder)
    if (above === folder) throw new Error('The folder of the program was not found above its own code.')
    folder = above
  }
}

const root = programFolder()

/** Path of a file shipped as data: `resourcePath('fonts', 'SourceSans3-Regular.ttf')`. */
export const resourcePath = (...parts: string[]): string => join(root, 'resources', ...parts)

/** Path of a bundle made by the build: `builtPath('photograph-worker.mjs')`. Workers are always started from here. */
export const builtPath = (...parts: string[]): string => join(root, '.built', ...parts)
