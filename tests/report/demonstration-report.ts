import { join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import { reportUseCases } from '../../electron/use-cases/report.ts'
import { startProgram } from '../../electron/use-cases/running-program.ts'
import type { Paper } from '../../shared-types/edition.ts'
import { openDemonstration } from '../demonstration/made-once.ts'

/** The issued report on the demonstration car: record, clock and ids are the same each time, so that its bytes are. */
export async function demonstrationReport(scratchFolder: string, paper: Paper = 'A4'): Promise<Buffer> {
  const program = startProgram({
    recordsFolder: scratchFolder,
    scratchFolder: join(scratchFolder, 'scratch'),
    now: () => '2026-06-02T14:00:00.000Z',
    tell: () => undefined,
  })
  try {
    await openDemonstration(program, join(scratchFolder, 'demonstration.wmk'))
    await reportUseCases['edition.issue'](program, {
      commandId: '2f1c9a7e-3b60-4d58-9e27-0a4b8c6d1f35',
      paper,
      reason: '',
    })
    const edition = program.record().view().editions.at(-1)
    if (edition === undefined) throw new Error('No edition was issued.')
    return await buffer(program.record().bytes.read(edition.sha256))
  } finally {
    await program.end()
  }
}
