import { resolve } from 'node:path'
import react from '@vitejs/plugin-react'
import { defineConfig } from 'vitest/config'
import { LongestFirst } from './longest-first.ts'
import { numericKernel } from './steps/kernel.mjs'
import { browserForTests } from './test-browser.ts'

const top = resolve(import.meta.dirname, '..')
const shared = {
  // Modules are read once for a worker, not once for a file, which for many takes longer than its tests.
  isolate: false,
  /** Path of a Chromium-family browser for tests that drive one; empty when playwright's own is to be used. */
  env: { WITNESSMARK_TEST_BROWSER: browserForTests() },
  testTimeout: 120_000,
  hookTimeout: 120_000,
  globalSetup: [resolve(import.meta.dirname, 'vitest-build.ts')],
}

/** Two projects: `inside` needs no browser; `pages` drives one and needs the built page. */
export default defineConfig({
  root: top,
  plugins: [react()],
  define: { NUMERIC_KERNEL: JSON.stringify(await numericKernel()) },
  test: {
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    // Room for what lives briefly: generated drawings and texts are a seventh cheaper when they are not copied on.
    execArgv: ['--max-semi-space-size=64'],
    projects: [
      {
        extends: true,
        test: {
          ...shared,
          name: 'inside',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/pages/**', 'tests/benchmarks/**'],
        },
      },
      {
        extends: true,
        test: { ...shared, name: 'pages', include: ['tests/pages/**/*.test.{ts,tsx}'] },
      },
    ],
  },
})
