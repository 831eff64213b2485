import { type Fault, placeOf, type SourceFile, type SourceTree } from './source-tree.ts'

/** SQL is written in capitals, which tells it from prose such as "select a panel from the list". */
const sql =
  /\b(SELECT\s[\s\S]*\bFROM|INSERT\s+(OR\s+\w+\s+)?INTO|UPDATE\s+\w+\s+SET|DELETE\s+FROM|CREATE\s+(TABLE|INDEX|TRIGGER|VIEW)|DROP\s+TABLE|PRAGMA\s|VACUUM\s+INTO|BEGIN\s+(IMMEDIATE|EXCLUSIVE|TRANSACTION))\b/

/** Folders of the program itself, whose files the rules of size and place bind. */
const isProgram = (path: string) => /^(electron|renderer|shared-types)\//.test(path)
const inRecord = (path: string) => path.startsWith('electron/record/')
const mayKnowWindows = (path: string) =>
  path.startsWith('electron/doors/') || ['electron/main.ts', 'electron/preload.ts'].includes(path)

/** Rule 3, first half: only `record/` speaks SQL or holds a connection. */
export function sqlInRecordOnly({ files }: SourceTree): Fault[] {
  return files
    .filter(({ path }) => isProgram(path) && !inRecord(path))
    .flatMap((file) => [
      ...file.texts
        .filter(({ text }) => sql.test(text))
        .map(({ line }) => ({ path: file.path, line, says: 'SQL is spoken only in electron/record' })),
      ...file.imports
        .filter(
          ({ asked }) =>
            asked === 'sqlite3' || /^electron\/record\/connection(\.ts|\/)/.test(placeOf(file, asked) ?? ''),
        )
        .map(({ asked, line }) => ({
          path: file.path,
          line,
          says: `only electron/record holds a connection; this imports ${asked}`,
        })),
    ])
}

const waysOut = /^(electron(\/.*)?|(node:)?(http|https|http2|net|tls|dgram))$/

/** Rule 3, second half: only the doors and the two entry points know Electron or HTTP. */
export function windowsInDoorsOnly({ files }: SourceTree): Fault[] {
  return files
    .filter(({ path }) => path.startsWith('electron/') && !mayKnowWindows(path))
    .flatMap(({ path, imports }) =>
      imports
        .filter(({ asked }) => waysOut.test(asked))
        .map(({ asked, line }) => ({ path, line, says: `only doors know Electron or HTTP; this imports ${asked}` })),
    )
}

/** What is exported has a name of its own; configuration files of tools, which ask for it, excepted. */
export function noDefaultExports({ files }: SourceTree): Fault[] {
  return files.flatMap(({ path, defaultExportLine: line }) =>
    line === null || path.endsWith('.config.ts')
      ? []
      : [{ path, line, says: 'exports have names; this is a default export' }],
  )
}

const LONGEST = 300

/** A file does one thing, and one thing fits in 300 lines. */
export function noLongFiles({ files }: SourceTree): Fault[] {
  const lines = ({ text }: SourceFile) => text.trimEnd().split('\n').length
  return files
    .filter((file) => isProgram(file.path) && lines(file) > LONGEST)
    .map((file) => ({
      path: file.path,
      line: LONGEST + 1,
      says: `a file has at most ${LONGEST} lines; this has ${lines(file)}`,
    }))
}

const outside = /\.\.\/shared(?![\w-])/

/** The project reads nothing from beside itself: what it uses is its own data. */
export function nothingFromBeside({ files }: SourceTree): Fault[] {
  return files.flatMap(({ path, text }) =>
    text
      .split('\n')
      .flatMap((line, at) =>
        outside.test(line) ? [{ path, line: at + 1, says: 'a path leads out of the project' }] : [],
      ),
  )
}

const standing = new Set([
  ...['README.md', 'DEVELOPERS.md', 'LICENSE', 'package.json', 'package-lock.json', 'tsconfig.json'],
  ...['electron', 'renderer', 'shared-types', 'resources', 'tests', 'build'],
  ...['node_modules', 'demonstration'],
])

/** The top of the project is fixed; dot-files and what git leaves out may come and go. */
export function topAsFixed({ topEntries }: SourceTree): Fault[] {
  return topEntries
    .filter((name) => !name.startsWith('.') && !standing.has(name))
    .map((name) => ({ path: name, line: 1, says: 'the top of the project is fixed; put this into one of its folders' }))
}
