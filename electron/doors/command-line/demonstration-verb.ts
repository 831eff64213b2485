import { existsSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { writeServed } from './files.ts'
import { ask, type Verb, withProgram } from './verb.ts'

/** Makes what is not there yet: the demonstration record, its first edition, and the report as a file. */
export const demonstration: Verb = {
  name: 'demo',
  follows: '',
  does: 'make the demonstration record and its report, and print where they are',
  fewest: 0,
  most: 0,
  options: { folder: { type: 'string' } },
  act: async ({ options }, around) => {
    const folder = resolve(around.here, typeof options.folder === 'string' ? options.folder : 'demonstration')
    if (!existsSync(join(folder, 'demonstration.wmk'))) around.say('Making the demonstration record and its report ...')
    return withProgram(around, folder, async (begun) => {
      const view = await ask(begun, 'records.demonstration', {})
      const issued = view.editions.at(-1)?.number
      const edition =
        issued ??
        (await ask(begun, 'edition.issue', { commandId: crypto.randomUUID(), paper: 'A4', reason: '' })).number ??
        0
      const report = join(folder, 'demonstration.pdf')
      if (issued === undefined || !existsSync(report))
        await writeServed(await begun.behind.edition(edition), report, true)
      around.print(`Record: ${view.path}`)
      around.print(`Report: ${report}`)
      return 0
    })
  },
}
