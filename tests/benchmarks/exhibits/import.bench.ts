import { execFileSync, fork } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { startProgram } from '../../../electron/use-cases/running-program.ts'
import { useCases } from '../../../electron/use-cases/use-cases.ts'
import { withComment } from '../../fixtures/camera-files.ts'
import { beginning } from '../../record/sample-record.ts'

interface Row {
  readonly what: string
  readonly ours: string | number
  readonly reference: string | number | null
  readonly ratio: string | number | null
  readonly aim: string | number
}

/** Different pictures made; the rest are these under another hash. */
const BASES = 8

/** Twelve million pixels of gradient under noise, which a JPEG of this quality holds in some 4 MB, as a camera's does. */
async function twelveMegapixels(seed: number): Promise<Buffer> {
  const [width, height] = [4000, 3000]
  const noise = await sharp({
    create: {
      width,
      height,
      channels: 3,
      background: '#000',
      noise: { type: 'gaussian', mean: 100 + 8 * seed, sigma: 12 },
    },
  })
    .raw()
    .toBuffer()
  for (let y = 0; y < height; y++) {
    const shade = (y * 90) / height
    for (let at = y * width * 3; at < (y + 1) * width * 3; at++) noise[at] = Math.min(255, (noise[at] ?? 0) + shade)
  }
  return sharp(noise, { raw: { width, height, channels: 3 } })
    .blur(0.6)
    .jpeg({ quality: 92 })
    .withExif({ IFD0: { Make: 'Fenland', Model: 'Plate 2', Orientation: seed % 2 === 0 ? '1' : '6' } })
    .toBuffer()
}

async function writePictures(folder: string, count: number): Promise<readonly string[]> {
  const bases = await Promise.all(Array.from({ length: Math.min(BASES, count) }, (_, seed) => twelveMegapixels(seed)))
  const paths: string[] = []
  for (let at = 0; at < count; at++) {
    const path = join(folder, `${at}.jpg`)
    await writeFile(path, withComment(bases[at % bases.length] ?? Buffer.alloc(0), `copy ${at}`))
    paths.push(path)
  }
  return paths
}

/** Processor seconds of this process and of every child it has waited for (proc(5), stat fields 14 to 17, 100 a second). */
function processorSeconds(): number {
  const fields = readFileSync('/proc/self/stat', 'utf8').split(') ')[1]?.split(' ') ?? []
  return fields.slice(11, 15).reduce((sum, field) => sum + Number(field), 0) / 100
}

/** Greatest resident memory so far of a process, MB (proc(5), status field VmHWM); 0 once it has ended. */
function peakMegabytes(process: string): number {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${process}/status`, 'utf8'))?.[1] ?? 0) / 1024
  } catch {
    return 0
  }
}

/** Watches this process and its workers until told to stop; answers the sum of what each needed at most, MB. */
function watchMemory(): () => number {
  const peaks = new Map<string, number>()
  const look = () => {
    const children = readFileSync(`/proc/self/task/${process.pid}/children`, 'utf8').trim().split(' ')
    for (const one of ['self', ...children.filter((child) => child !== '')]) peaks.set(one, peakMegabytes(one))
  }
  const timer = setInterval(look, 100)
  return () => {
    clearInterval(timer)
    return [...peaks.values()].reduce((sum, peak) => sum + peak, 0)
  }
}

interface Spent {
  readonly seconds: number
  readonly megabytes: number
}

async function importAll(folder: string, paths: readonly string[]): Promise<Spent> {
  const program = startProgram({ recordsFolder: folder, scratchFolder: join(folder, 'scratch'), tell: () => undefined })
  const { particulars, commission, visit } = beginning
  await useCases['records.create'](program, { fileName: 'import', particulars, commission, visit })
  const memory = watchMemory()
  const began = processorSeconds()
  const { taken } = await useCases['exhibits.import'](program, {
    taskId: randomUUID(),
    sources: paths.map((path) => ({ from: 'file', path })),
    panelId: null,
    view: null,
    madeBy: '',
  })
  const megabytes = memory()
  if (taken.length !== paths.length) throw new Error(`${paths.length - taken.length} photographs were refused.`)
  // The workers are counted once they have been waited for.
  await new Promise((resolve) => setTimeout(resolve, 200))
  const spent = { seconds: processorSeconds() - began, megabytes }
  await program.end()
  return spent
}

/** Set in the process that imports, so that the pictures made here do not count as its memory. */
const CARD = process.env.WITNESSMARK_BENCH_CARD

if (CARD !== undefined) {
  const paths = readdirSync(CARD).map((name) => join(CARD, name))
  process.send?.(await importAll(join(CARD, '..'), paths))
  process.disconnect()
}

function importElsewhere(card: string): Promise<Spent> {
  const child = fork(import.meta.filename, [], { env: { ...process.env, WITNESSMARK_BENCH_CARD: card } })
  return new Promise((resolve, reject) => {
    child.once('message', (spent) => resolve(spent as Spent))
    child.once('exit', (code) => reject(new Error(`The importing process ended with ${code}.`)))
  })
}

/** The same two renderings, made one after the other from each file by one process for each size. */
function thumbnailsByVips(folder: string, paths: readonly string[]): number {
  const began = processorSeconds()
  for (const size of [1600, 320]) {
    const target = join(folder, `%s-${size}.jpg[Q=82,strip]`)
    execFileSync('vipsthumbnail', ['--size', `${size}x${size}>`, '--eprofile', 'srgb', '-o', target, ...paths], {
      env: { ...process.env, VIPS_CONCURRENCY: '1' },
      stdio: ['ignore', 'ignore', 'inherit'],
    })
  }
  return processorSeconds() - began
}

/** Full import of 200 twelve-megapixel JPEGs against `vipsthumbnail` making the same two renderings, in processor time. */
export async function importOfPhotographs(count = 200): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'import-bench-'))
  try {
    const [card, reference] = [join(folder, 'card'), join(folder, 'vips')]
    for (const each of [card, reference]) mkdirSync(each)
    const paths = await writePictures(card, count)
    const { seconds: ours, megabytes } = await importElsewhere(card)
    const what = `import of ${count} photographs of 12 Mpx, processor seconds; vipsthumbnail makes the same two renderings`
    let theirs: number | null = null
    try {
      theirs = thumbnailsByVips(reference, paths)
    } catch {
      process.stderr.write('  vipsthumbnail is not installed: no reference\n')
    }
    return [
      { what, ours, reference: theirs, ratio: theirs === null ? null : ours / theirs, aim: 'at most 1.0' },
      {
        what: `import of ${count} photographs of 12 Mpx, greatest resident memory of program and workers, MB`,
        ours: megabytes,
        reference: null,
        ratio: null,
        aim: 'under 600',
      },
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
