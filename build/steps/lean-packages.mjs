import { join } from 'node:path'
import { root } from './running.mjs'

const FROM_PDF_LIB = 'from a file of pdf-lib'

/** Leaves out of the bundles what the program never calls of its packages. */
export const leanPackages = {
  name: 'lean-packages',
  setup(build) {
    // Of pdf-lib the objects of PDF alone are used. Its files change nothing outside themselves, which its manifest does
    // not say; said here, its forms, standard fonts and image readers stay out.
    build.onResolve({ filter: /^pdf-lib$|^\.{1,2}(\/|$)|^@pdf-lib\// }, async (asked) => {
      const own = asked.path === 'pdf-lib' || /[\\/]@?pdf-lib[\\/]/.test(asked.importer)
      if (!own || asked.pluginData === FROM_PDF_LIB) return undefined
      const { importer, kind, resolveDir } = asked
      const wanted = asked.path === 'pdf-lib' ? 'pdf-lib/es/index.js' : asked.path
      const found = await build.resolve(wanted, { importer, kind, resolveDir, pluginData: FROM_PDF_LIB })
      return found.errors.length > 0 ? found : { path: found.path, external: found.external, sideEffects: false }
    })
    // The words of zod for its own messages, in the one language the program speaks.
    build.onLoad({ filter: /[\\/]zod[\\/]v4[\\/]locales[\\/]index\.js$/ }, () => ({
      contents: "export { default as en } from './en.js'",
    }))
  },
}

/**
 * Packages in plain JavaScript that do what zlib does: the line breaker unpacks its table of characters by one at each start,
 * and the objects of PDF bring the other, which the program does not call.
 */
export const fasterPackages = {
  'tiny-inflate': join(root, 'build', 'steps', 'inflate-by-zlib.cjs'),
  pako: join(root, 'build', 'steps', 'deflate-by-zlib.cjs'),
}
