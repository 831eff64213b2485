#!/usr/bin/env node
// Makes the table of how often filler intervals hold the truth on simulated panels: `node build/coating-coverage.mjs test`.
// `tune` sets the ends of the intervals anew from other panels. A number after the word says how many panels per density.
import { join } from 'node:path'
import { bundle } from './steps/bundling.mjs'
import { root } from './steps/running.mjs'

const target = join(root, '.built', 'coating-coverage.mjs')
await bundle('build/coating-coverage.ts', target)
const { run } = await import(target)
run(root, process.argv.slice(2))
