import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { noCircles, nothingCallsUp, roomsKept } from '../../build/house-rules/import-rules.ts'
import {
  noDefaultExports,
  noLongFiles,
  nothingFromBeside,
  sqlInRecordOnly,
  topAsFixed,
  windowsInDoorsOnly,
} from '../../build/house-rules/place-rules.ts'
import { type Fault, readSourceTree, type SourceTree } from '../../build/house-rules/source-tree.ts'

let top = ''
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'witnessmark-house-'))
})
afterEach(() => rmSync(top, { recursive: true, force: true }))

/** A small project that breaks nothing. */
const sound = {
  'shared-types/panel.ts': "import { z } from 'zod'\nexport const panel = z.string()\n",
  'renderer/plan.tsx':
    "import { useState } from 'react'\nimport { panel } from '../shared-types/panel.ts'\nexport const Plan = () => (useState(panel), null)\n",
  'electron/analysis/shares.ts': "import { sum } from 'd3-array'\nexport const shares = sum\n",
  'electron/record/table.ts':
    "import sqlite from 'sqlite3'\nexport const table = [sqlite, 'SELECT number FROM findings']\n",
  'electron/use-cases/walk.ts': "import { table } from '../record/table.ts'\nexport const walk = table\n",
  'electron/doors/page.ts':
    "import { createServer } from 'node:http'\nimport { walk } from '../use-cases/walk.ts'\nexport const page = [createServer, walk]\n",
  'electron/main.ts': "import { app } from 'electron'\nimport './doors/page.ts'\nexport const main = app\n",
}

function treeWith(planted: { readonly [path: string]: string }): SourceTree {
  for (const [path, text] of Object.entries({ ...sound, ...planted })) {
    mkdirSync(dirname(join(top, path)), { recursive: true })
    writeFileSync(join(top, path), text)
  }
  return readSourceTree(top)
}

const told = (faults: readonly Fault[]) => faults.map(({ path, line }) => `${path}:${line}`)

const everyRule = [
  roomsKept,
  nothingCallsUp,
  noCircles,
  sqlInRecordOnly,
  windowsInDoorsOnly,
  noDefaultExports,
  noLongFiles,
  nothingFromBeside,
  topAsFixed,
]

it('finds nothing in a sound tree', () => {
  const tree = treeWith({ '.hidden/file.ts': '', 'tests/sound.test.ts': "import '../electron/main.ts'\n" })
  expect(everyRule.flatMap((rule) => rule(tree))).toEqual([])
})

describe('what a folder may import', () => {
  it.each([
    [
      'renderer reaching into electron',
      'renderer/a.ts',
      "import { walk } from '../electron/use-cases/walk.ts'\nwalk()\n",
    ],
    ['renderer using Node.js', 'renderer/a.ts', "import { readFileSync } from 'node:fs'\nreadFileSync('a')\n"],
    ['renderer using Node.js under its old name', 'renderer/a.ts', "export const fs = import('fs/promises')\n"],
    ['renderer using Electron', 'renderer/a.ts', "import { ipcRenderer } from 'electron'\nipcRenderer.send('a')\n"],
    [
      'shared-types using another library',
      'shared-types/a.ts',
      "import { format } from 'date-fns'\nformat(0, 'yyyy')\n",
    ],
    ['shared-types reaching out', 'shared-types/a.ts', "export type { walk } from '../electron/use-cases/walk.ts'\n"],
    ['analysis doing I/O', 'electron/analysis/a.ts', "import { readFileSync } from 'node:fs'\nreadFileSync('a')\n"],
    ['analysis reaching the record', 'electron/analysis/a.ts', "export type T = import('../record/table.ts').T\n"],
    ['analysis using any library', 'electron/analysis/a.ts', "import sharp from 'sharp'\nsharp('a')\n"],
    ['electron importing renderer', 'electron/report/a.ts', "export * from '../../renderer/plan.tsx'\n"],
    ['electron importing tests', 'electron/report/a.ts', "const a = require('../../tests/a.ts')\na()\n"],
  ])('refuses %s', (_what, path, text) => {
    expect(told(roomsKept(treeWith({ [path]: text })))).toContain(`${path}:1`)
  })
})

describe('data flows one way', () => {
  it.each([
    ['record', 'use-cases', 'electron/record/a.ts', "import { walk } from '../use-cases/walk.ts'\nwalk()\n"],
    ['report', 'doors', 'electron/report/a.ts', "import { page } from '../doors/page.ts'\npage()\n"],
    ['use-cases', 'doors', 'electron/use-cases/a.ts', "import { page } from '../doors/page.ts'\npage()\n"],
    ['figures', 'main', 'electron/figures/a.ts', "import { main } from '../main.ts'\nmain()\n"],
  ])('%s may not call up to %s', (_low, _high, path, text) => {
    expect(told(nothingCallsUp(treeWith({ [path]: text })))).toEqual([`${path}:1`])
  })

  it('no circle, however long, and types count', () => {
    const faults = noCircles(
      treeWith({
        'electron/report/a.ts': "import { b } from './b.ts'\nexport const a = b\n",
        'electron/report/b.ts': "import { c } from './c.ts'\nexport const b = c\n",
        'electron/report/c.ts': "\nimport type { a } from './a.ts'\nexport const c = (): typeof a => 1\n",
      }),
    )
    expect(told(faults)).toEqual(['electron/report/c.ts:2'])
    expect(faults[0]?.says).toContain(
      'electron/report/a.ts > electron/report/b.ts > electron/report/c.ts > electron/report/a.ts',
    )
  })
})

describe('SQL is spoken only in the record', () => {
  it.each([
    ['a string', "export const a = 'SELECT * FROM findings'\n"],
    ['a template over lines', 'export const a = `INSERT INTO\n findings VALUES (1)`\n'],
    ['a pragma', "export const a = 'PRAGMA journal_mode = WAL'\n"],
    ['the library', "import sqlite from 'sqlite3'\nexport const a = sqlite\n"],
    ['the connection', "import { open } from '../record/connection.ts'\nexport const a = open\n"],
  ])('refuses %s in a use case', (_what, text) => {
    expect(told(sqlInRecordOnly(treeWith({ 'electron/use-cases/a.ts': text })))).toEqual(['electron/use-cases/a.ts:1'])
  })

  it('lets prose be', () => {
    const prose = "export const a = 'Select a panel from the list, or delete from it.'\n"
    expect(sqlInRecordOnly(treeWith({ 'electron/use-cases/a.ts': prose }))).toEqual([])
  })
})

describe('only doors know Electron or HTTP', () => {
  it.each(['electron', 'electron/main', 'node:http', 'https', 'node:net', 'http2'])(
    'a use case may not import %s',
    (name) => {
      const tree = treeWith({ 'electron/use-cases/a.ts': `\nimport '${name}'\n` })
      expect(told(windowsInDoorsOnly(tree))).toEqual(['electron/use-cases/a.ts:2'])
    },
  )

  it('the command line stands with the doors, not with the entry points of the window', () => {
    const tree = treeWith({ 'electron/command.ts': "import 'electron'\n" })
    expect(told(windowsInDoorsOnly(tree))).toEqual(['electron/command.ts:1'])
  })
})

describe('shape of files', () => {
  it.each([
    ['default', 'export default 1\n'],
    ['named as default', 'const a = 1\nexport { a as default }\n'],
  ])('refuses an export %s', (_how, text) => {
    expect(noDefaultExports(treeWith({ 'tests/a.ts': text }))).toHaveLength(1)
  })

  it('lets a configuration file export what its tool asks for', () => {
    expect(noDefaultExports(treeWith({ 'build/a.config.ts': 'export default {}\n' }))).toEqual([])
  })

  it('refuses 301 lines and takes 300', () => {
    const lines = (count: number) => 'export {}\n'.repeat(count)
    const tree = treeWith({
      'renderer/long.tsx': lines(301),
      'renderer/fits.tsx': lines(300),
      'tests/long.ts': lines(301),
    })
    expect(told(noLongFiles(tree))).toEqual(['renderer/long.tsx:301'])
  })
})

it('refuses a path that leads out of the project, and knows the contract from it', () => {
  const beside = `..${'/'}shared`
  const tree = treeWith({
    'tests/a.ts': `export const a = '${beside}/facts'\nexport const b = '${beside}-types/panel.ts'\n`,
  })
  expect(told(nothingFromBeside(tree))).toEqual(['tests/a.ts:1'])
})

it('keeps the top of the project as it is fixed', () => {
  expect(told(topAsFixed(treeWith({ 'scripts/a.ts': '', 'notes.md': '', '.dotted/a.ts': '' })))).toEqual([
    'notes.md:1',
    'scripts:1',
  ])
})
