#!/usr/bin/env node
// Makes the table of how often filler intervals hold the truth on simulated panels, and prints it into DEVELOPERS.md:
// `node build/coating-coverage.mjs`. `node build/coating-coverage.mjs tune` sets the ends of the intervals anew from other
// panels. Either takes a number of panels per density after it: `test 400`, `tune 1600`.
import { join } from 'node:path'
import { bundle } from './steps/bundling.mjs'
import { root } from './steps/running.mjs'

const target = join(root, '.built', 'coating-coverage.mjs')
await bundle('build/coating-coverage.ts', target)
const { run } = await import(target)
run(root, process.argv.slice(2))
