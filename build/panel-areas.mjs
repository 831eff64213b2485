#!/usr/bin/env node
// Makes the list of panel areas anew from the drawn bodies: `node build/panel-areas.mjs`. A test says when it has to be.
import { join } from 'node:path'
import { bundle } from './steps/bundling.mjs'
import { root } from './steps/running.mjs'

const target = join(root, '.built', 'panel-areas.mjs')
await bundle('build/panel-areas.ts', target)
const { writePanelAreas } = await import(target)
writePanelAreas(root)
