import { execFileSync } from 'node:child_process'
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PHOTOGRAPHS, picturePath, SIZE } from './report-pictures.ts'

const ROUNDS = 5

/** Certificates the environment has Node read at each start take as long as the program's own modules, and no report needs them. */
const { NODE_EXTRA_CA_CERTS: _, ...withoutCertificates } = process.env

/** Renderings of the size the program makes, with noise so that they compress like photographs; each differs. */
async function makePictures(folder: string): Promise<number> {
  const { default: sharp } = await import('sharp')
  await mkdir(folder, { recursive: true })
  let byteLength = 0
  for (let number = 1; number <= PHOTOGRAPHS; number++) {
    const bytes = await sharp({
      create: {
        width: SIZE.widthPx,
        height: SIZE.heightPx,
        channels: 3,
        noise: { type: 'gaussian', mean: 110 + (number % 30), sigma: 14 },
        background: '#000',
      },
    })
      .jpeg({ quality: 82 })
      .toBuffer()
    byteLength += bytes.length
    await writeFile(picturePath(folder, number), bytes)
  }
  return byteLength
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN

function timed(run: () => string): { readonly seconds: number; readonly said: string } {
  const start = performance.now()
  const said = run()
  return { seconds: (performance.now() - start) / 1000, said }
}

/** A report of 200 photographs against img2pdf wrapping the same renderings; whole processes, start included, paired. */
export async function reportOfPhotographs() {
  const folder = await mkdtemp(join(tmpdir(), 'report-bench-'))
  try {
    const pictures = join(folder, 'pictures')
    const byteLength = await makePictures(pictures)
    const files = Array.from({ length: PHOTOGRAPHS }, (_, index) => picturePath(pictures, index + 1))
    const [ours, theirs, peaks]: [number[], number[], number[]] = [[], [], []]
    let pages = 0
    for (let round = 0; round <= ROUNDS; round++) {
      const report = timed(() =>
        execFileSync(
          process.execPath,
          [join(import.meta.dirname, 'compose-report-child.mjs'), pictures, join(folder, 'report.pdf')],
          {
            encoding: 'utf8',
            env: withoutCertificates,
          },
        ),
      )
      const wrapping = timed(() =>
        execFileSync('img2pdf', [...files, '-o', join(folder, 'wrapped.pdf')], { encoding: 'utf8' }),
      )
      if (round === 0) continue
      const said = JSON.parse(report.said) as { pages: number; peakMiB: number }
      pages = said.pages
      peaks.push(said.peakMiB)
      ours.push(report.seconds)
      theirs.push(wrapping.seconds)
    }
    const megabytes = (byteLength / 1e6).toFixed(0)
    return [
      {
        what: `report of ${PHOTOGRAPHS} photographs, ${megabytes} MB, ${pages} pages, median of ${ROUNDS} pairs`,
        ours: `${median(ours).toFixed(2)} s`,
        reference: `${median(theirs).toFixed(2)} s, img2pdf wrapping the same renderings`,
        ratio: median(ours) / median(theirs),
        aim: 1.5,
      },
      {
        what: 'peak memory of that report',
        ours: `${Math.max(...peaks).toFixed(0)} MiB`,
        reference: '200 MiB',
        ratio: Math.max(...peaks) / 200,
        aim: 1,
      },
    ]
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
