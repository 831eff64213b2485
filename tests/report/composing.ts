import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Writable } from 'node:stream'
import { composeReport } from '../../electron/report/compose-report.ts'
import type { ReportContent } from '../../electron/report/report-content.ts'

export interface Composed {
  readonly bytes: Buffer
  readonly path: string
  readonly pages: number
  readonly byteLength: number
  readonly sha256: string
}

/** Composes a report and keeps it as a file, so that outside programs can read it. */
export async function composed(content: ReportContent): Promise<Composed> {
  const chunks: Buffer[] = []
  const sink = new Writable({
    write(chunk: Buffer, _encoding, done) {
      chunks.push(Buffer.from(chunk))
      done()
    },
  })
  const written = await composeReport(content, sink)
  const bytes = Buffer.concat(chunks)
  const path = join(mkdtempSync(join(tmpdir(), 'report-')), 'report.pdf')
  writeFileSync(path, bytes)
  return { bytes, path, ...written }
}

/** Whether an outside program is there; says once that a check is left out when it is not. */
export function has(program: string): boolean {
  const found = spawnSync(program, ['-v']).error === undefined
  if (!found) console.warn(`${program} is not installed: the checks that ask it are left out`)
  return found
}

/** What an outside program prints. */
export const printed = (program: string, ...words: string[]): string =>
  execFileSync(program, words, { encoding: 'utf8', maxBuffer: 1 << 28 })

export const textOf = (path: string): string => printed('pdftotext', '-layout', path, '-')

export interface Word {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly text: string
}
export interface PageOfWords {
  readonly width: number
  readonly height: number
  readonly words: readonly Word[]
}

/** Words as poppler sees them, page by page, with their boxes in points. */
export function wordBoxes(path: string): readonly PageOfWords[] {
  const target = `${path}.html`
  execFileSync('pdftotext', ['-bbox', path, target])
  return readFileSync(target, 'utf8')
    .split('<page ')
    .slice(1)
    .map((page) => {
      const size = /width="([\d.]+)" height="([\d.]+)"/.exec(page)
      const words = [
        ...page.matchAll(/<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<\/word>/g),
      ]
      return {
        width: Number(size?.[1]),
        height: Number(size?.[2]),
        words: words.map(([, left, top, right, bottom, text]) => ({
          left: Number(left),
          top: Number(top),
          right: Number(right),
          bottom: Number(bottom),
          text: text ?? '',
        })),
      }
    })
}

/** Pairs of words of a page that lie on one another, as text. */
export function overlaps({ words }: PageOfWords): string[] {
  return words.flatMap((word, index) =>
    words.slice(index + 1).flatMap((other) => {
      const across = Math.min(word.right, other.right) - Math.max(word.left, other.left)
      const apart = Math.abs((word.top + word.bottom) / 2 - (other.top + other.bottom) / 2)
      return across > 0.6 && apart < 4 ? [`${word.text.slice(0, 30)} on ${other.text.slice(0, 30)}`] : []
    }),
  )
}

/** Words that stand outside the text field and the lines of head and foot. */
export function outsideMargins(page: PageOfWords): string[] {
  // Dimension lines and the title's optical edge may hang out by 8 points.
  const side = (page.width - (170 / 25.4) * 72) / 2 - 8
  return page.words
    .filter(
      (word) =>
        word.left < side || word.right > page.width - side + 4 || word.top < 20 || word.bottom > page.height - 20,
    )
    .map(({ text }) => text.slice(0, 40))
}
