import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { build } from 'esbuild'
import type { DrawnPlan } from './drawn-plan-child.ts'

/** Serves a page that draws one plan with the program's own drawing and nothing else. */
export async function servePlan(plan: DrawnPlan) {
  const built = await build({
    entryPoints: ['tests/pages/drawn-plan-child.ts'],
    ...{ bundle: true, minify: true, write: false, format: 'esm', outdir: '.built', jsx: 'automatic' },
    define: { 'process.env.NODE_ENV': '"production"' },
  })
  const textOf = (end: string) => built.outputFiles.find(({ path }) => path.endsWith(end))?.text ?? ''
  const page =
    '<!doctype html><html lang="en"><title>plan</title><link rel="stylesheet" href="/page.css"><div id="root"></div><script type="module" src="/page.js"></script>'
  const answers: Readonly<Record<string, readonly [string, string]>> = {
    '/page.js': ['text/javascript', textOf('.js')],
    '/page.css': ['text/css', textOf('.css')],
    '/plan.json': ['application/json', JSON.stringify(plan)],
  }
  const server = createServer((asked, answer) => {
    const [kind, text] = answers[asked.url ?? ''] ?? ['text/html', page]
    answer.writeHead(200, { 'content-type': kind, 'cache-control': 'no-store' })
    answer.end(text)
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, stop: () => server.close() }
}
