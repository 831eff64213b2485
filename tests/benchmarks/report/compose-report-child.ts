import { createWriteStream, existsSync, readFile, readFileSync } from 'node:fs'
import { promisify } from 'node:util'
import { composeReport } from '../../../electron/report/compose-report.ts'
import { contentFixture, exhibitFixture, recordFixture } from '../../report/content-fixture.ts'
import { PHOTOGRAPHS, picturePath, SIZE } from './report-pictures.ts'

const bytesOf = promisify(readFile)

/**
 * Greatest resident memory of this process alone, MiB. What `resourceUsage` says on Linux also holds that of the process
 * which started this one (the kernel carries it over when a program is begun), so the kernel's own mark is read instead.
 */
function peakMiB(): number {
  const status = '/proc/self/status'
  const mark = existsSync(status) ? /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync(status, 'utf8'))?.[1] : undefined
  return (mark === undefined ? process.resourceUsage().maxRSS : Number(mark)) / 1024
}

/**
 * Composes one report of all photographs in a process of its own, so that its peak memory is the report's alone. It is
 * started like the command line, from what the build compiled, and reads its pictures beside other work as a record does.
 */
async function composeOnce(folder: string, target: string): Promise<void> {
  const exhibits = Array.from({ length: PHOTOGRAPHS }, (_, index) => exhibitFixture(index + 1))
  const content = contentFixture(recordFixture({ exhibits }), {
    pictureSizes: async () => new Map(exhibits.map(({ number }) => [number, SIZE])),
    picture: (number) => bytesOf(picturePath(folder, number)),
  })
  const { pages } = await composeReport(content, createWriteStream(target))
  process.stdout.write(JSON.stringify({ pages, peakMiB: peakMiB() }))
}

const [, , pictures = '', target = ''] = process.argv
void composeOnce(pictures, target)
