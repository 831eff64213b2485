import { randomBytes } from 'node:crypto'
import { readFile, realpath } from 'node:fs/promises'
import { extname, join, sep } from 'node:path'
import { headersFor, headersOfPage } from './headers.ts'

const mediaTypes: { readonly [extension: string]: string } = {
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ttf': 'font/ttf',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
}

async function fileInside(folder: string, path: string): Promise<string | null> {
  try {
    const top = await realpath(folder)
    const file = await realpath(join(top, decodeURIComponent(path)))
    return file.startsWith(top + sep) && extname(file) in mediaTypes ? file : null
  } catch {
    return null
  }
}

/** The page itself, with a fresh nonce for the style element its control library writes. */
async function page(folder: string): Promise<Response> {
  const nonce = randomBytes(16).toString('base64url')
  const text = await readFile(join(folder, 'index.html'), 'utf8')
  const withNonce = text.replace('</head>', `<meta property="csp-nonce" nonce="${nonce}" /></head>`)
  return new Response(withNonce, { headers: headersOfPage(nonce) })
}

interface BuiltFile {
  readonly bytes: Uint8Array<ArrayBuffer>
  readonly mediaType: string
}

/** What was read already: the build writes other bytes under another name, so a file is read once. */
const readBefore = new Map<string, BuiltFile>()
const namedByContent = /^\/assets\/[\w.-]+-[\w-]{8}\.\w+$/

async function builtFile(folder: string, path: string): Promise<BuiltFile | null> {
  const key = `${folder}${path}`
  const known = readBefore.get(key)
  if (known !== undefined) return known
  const file = await fileInside(folder, path)
  if (file === null) return null
  const bytes = new Uint8Array(await readFile(file))
  const built = { bytes, mediaType: mediaTypes[extname(file)] ?? 'application/octet-stream' }
  if (namedByContent.test(path)) readBefore.set(key, built)
  return built
}

/** A file of the built page, by the path of the address; null when the page has no such file, whatever else the disk has. */
export async function servePageFile(folder: string, path: string): Promise<Response | null> {
  if (path === '/' || path === '/index.html') return page(folder)
  const built = await builtFile(folder, path)
  if (built === null) return null
  return new Response(built.bytes, {
    headers: headersFor('bytes', { 'content-type': built.mediaType, 'content-length': String(built.bytes.byteLength) }),
  })
}
