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

/** A file of the built page, by the path of the address; null when the page has no such file, whatever else the disk has. */
export async function servePageFile(folder: string, path: string): Promise<Response | null> {
  if (path === '/' || path === '/index.html') return page(folder)
  const file = await fileInside(folder, path)
  if (file === null) return null
  const bytes = await readFile(file)
  return new Response(new Uint8Array(bytes), {
    headers: headersFor('bytes', { 'content-type': mediaTypes[extname(file)] ?? 'application/octet-stream' }),
  })
}
