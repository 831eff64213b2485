import { readdirSync, readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { parseSync } from 'vite'

/** One thing a file asks for by name, as written: `./panel.ts`, `zod`, `node:fs`. */
export interface Import {
  readonly asked: string
  readonly line: number
}

/** What the rules look at in one source file; paths run from the top of the project with forward slashes. */
export interface SourceFile {
  readonly path: string
  readonly text: string
  readonly imports: readonly Import[]
  /** Texts written in the code: string literals and the fixed pieces of templates. */
  readonly texts: readonly { readonly text: string; readonly line: number }[]
  readonly defaultExportLine: number | null
}

export interface SourceTree {
  /** Names at the top of the project. */
  readonly topEntries: readonly string[]
  readonly files: readonly SourceFile[]
}

/** A rule broken at a place. */
export interface Fault {
  readonly path: string
  readonly line: number
  readonly says: string
}

interface SyntaxNode {
  readonly type: string
  readonly start: number
  readonly [property: string]: unknown
}

const isNode = (value: unknown): value is SyntaxNode =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string'

/** Every node below one, itself included. */
function* nodesOf(node: SyntaxNode): Generator<SyntaxNode> {
  yield node
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) yield* nodesOf(child)
  }
}

const literalText = (node: unknown): string | null =>
  isNode(node) && node.type === 'Literal' && typeof node.value === 'string' ? node.value : null

/** What a node imports: by declaration, re-export, call of `import` or `require`, or a type's `import('...')`. */
function askedBy(node: SyntaxNode): string | null {
  if (node.type === 'CallExpression') {
    const { callee, arguments: given } = node as unknown as { callee: SyntaxNode; arguments: unknown[] }
    return callee.name === 'require' ? literalText(given[0]) : null
  }
  const isImport = [
    'ImportDeclaration',
    'ExportNamedDeclaration',
    'ExportAllDeclaration',
    'ImportExpression',
    'TSImportType',
  ]
  return isImport.includes(node.type) ? literalText(node.source) : null
}

const templateText = (node: SyntaxNode): string | null =>
  node.type === 'TemplateElement' ? (node.value as { cooked: string | null }).cooked : null

/** Reads one file's text as the rules see it. Throws when the text is no TypeScript. */
export function readSource(path: string, text: string): SourceFile {
  const { program, module, errors } = parseSync(path, text)
  if (errors.length > 0) throw new Error(`${path} could not be read: ${errors[0]?.message}`)
  const lineAt = (offset: number) => text.slice(0, offset).split('\n').length
  const imports: Import[] = []
  const texts: { text: string; line: number }[] = []
  for (const node of nodesOf(program as unknown as SyntaxNode)) {
    const asked = askedBy(node)
    if (asked !== null) imports.push({ asked, line: lineAt(node.start) })
    const written = literalText(node) ?? templateText(node)
    if (written !== null) texts.push({ text: written, line: lineAt(node.start) })
  }
  const standing = module.staticExports.flatMap(({ entries }) => entries)
  const byDefault = standing.find(
    ({ exportName }) => exportName.kind === 'Default' || (exportName.kind === 'Name' && exportName.name === 'default'),
  )
  return { path, text, imports, texts, defaultExportLine: byDefault === undefined ? null : lineAt(byDefault.start) }
}

/** Folders whose TypeScript the rules read. */
const sourceFolders = ['electron', 'renderer', 'shared-types', 'tests', 'build']

/** Reads every TypeScript file of a project. */
export function readSourceTree(top: string): SourceTree {
  const topEntries = readdirSync(top)
  const paths = sourceFolders
    .filter((folder) => topEntries.includes(folder))
    .flatMap((folder) =>
      readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' }).map((path) =>
        posix.join(folder, path.replaceAll('\\', '/')),
      ),
    )
    .filter((path) => /\.tsx?$/.test(path))
    .sort()
  return { topEntries, files: paths.map((path) => readSource(path, readFileSync(join(top, path), 'utf8'))) }
}

/** Where a relative import leads, from the top of the project; null for a package. */
export const placeOf = (file: SourceFile, asked: string): string | null =>
  asked.startsWith('.') ? posix.normalize(posix.join(posix.dirname(file.path), asked)) : null
