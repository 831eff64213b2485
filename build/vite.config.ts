import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'
import { firstFrame } from './first-frame.ts'

const top = resolve(import.meta.dirname, '..')

/** What runs before the first picture: the start of the page, and nothing of the program behind it. */
const start =
  /[\\/](renderer[\\/](main|place-code|look[\\/]apply-tokens|store[\\/](start-of-page|place-list))|shared-types[\\/]tokens)\.ts$|preload-helper/u
/** Libraries every place stands on, in one file instead of many small ones. */
const foundation = /[\\/]node_modules[\\/](react|react-dom|scheduler|zustand)[\\/]|rolldown.runtime/u

/** The page: nothing inline, nothing fetched from elsewhere, so that its content security policy can be strict. */
export default defineConfig({
  root: resolve(top, 'renderer'),
  publicDir: false,
  plugins: [react(), firstFrame(top)],
  build: {
    outDir: resolve(top, '.built', 'renderer'),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2023',
    sourcemap: false,
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [
            { name: 'start', test: start, priority: 2 },
            { name: 'foundation', test: foundation, priority: 1 },
          ],
        },
      },
    },
  },
})
