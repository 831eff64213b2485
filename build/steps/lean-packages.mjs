import { join } from 'node:path'
import { root } from './running.mjs'

const FROM_PDF_LIB = 'from a file of pdf-lib'

/**
 * Of pdf-lib the program uses the objects of PDF alone. Its files change nothing outside themselves, which its manifest
 * does not say; said here, its forms, standard fonts and image readers stay out of the bundles.
 */
export const leanPackages = {
  name: 'lean-packages',
  setup(build) {
    build.onResolve({ filter: /^pdf-lib$|^\.{1,2}(\/|$)|^@pdf-lib\// }, async (asked) => {
      const own = asked.path === 'pdf-lib' || /[\\/]@?pdf-lib[\\/]/.test(asked.importer)
      if (!own || asked.pluginData === FROM_PDF_LIB) return undefined
      const { importer, kind, resolveDir } = asked
      const wanted = asked.path === 'pdf-lib' ? 'pdf-lib/es/index.js' : asked.path
      const found = await build.resolve(wanted, { importer, kind, resolveDir, pluginData: FROM_PDF_LIB })
      return found.errors.length > 0 ? found : { path: found.path, external: found.external, sideEffects: false }
    })
  },
}

/** The line breaker unpacks its table of characters at each start, by a package in plain JavaScript; zlib does it in no time. */
export const fasterPackages = { 'tiny-inflate': join(root, 'build', 'steps', 'inflate-by-zlib.cjs') }
