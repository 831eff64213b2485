import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

const top = resolve(import.meta.dirname, '..')

/** The page: nothing inline, nothing fetched from elsewhere, so that its content security policy can be strict. */
export default defineConfig({
  root: resolve(top, 'renderer'),
  publicDir: false,
  plugins: [react()],
  build: {
    outDir: resolve(top, '.built', 'renderer'),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    target: 'es2023',
    sourcemap: false,
    chunkSizeWarningLimit: 2000,
  },
})
