#!/usr/bin/env node
// Makes the table of how often the interval of a difference holds the truth on simulated panels before and after work, and
// prints it into DEVELOPERS.md: `node build/change-coverage.mjs`. A number of pairs per density may follow: `400`.
import { join } from 'node:path'
import { bundle } from './steps/bundling.mjs'
import { root } from './steps/running.mjs'

const target = join(root, '.built', 'change-coverage.mjs')
await bundle('build/change-coverage.ts', target)
const { run } = await import(target)
run(root, process.argv.slice(2))
