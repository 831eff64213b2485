import { basename, dirname, resolve } from 'node:path'
import type { RequestInput } from '../../../shared-types/contract.ts'
import { paper } from '../../../shared-types/edition.ts'
import type { RegisterName } from '../../../shared-types/record.ts'
import type { BegunProgram } from '../door-to-program.ts'
import { jsonFrom, writeServed } from './files.ts'
import { ask, type Said, type Surroundings, type Verb, WrongWords, withProgram } from './verb.ts'

const replace = { replace: { type: 'boolean' } } as const
const paperOption = { paper: { type: 'string' } } as const

/** Opens the record named first among the words, and acts on it. */
function onRecord(
  { words: [record = ''] }: Said,
  around: Surroundings,
  readOnly: boolean,
  act: (begun: BegunProgram) => Promise<number>,
): Promise<number> {
  return withProgram(around, undefined, async (begun) => {
    await ask(begun, 'records.open', { path: resolve(around.here, record), readOnly })
    return act(begun)
  })
}

function paperOf({ options }: Said): RequestInput<'report.preview'>['paper'] {
  const chosen = paper.safeParse(options.paper ?? 'A4')
  if (!chosen.success) throw new WrongWords('--paper is A4 or Letter.')
  return chosen.data
}

const make: Verb = {
  name: 'make',
  follows: 'RECORD.wmk [PARTICULARS.json]',
  does: 'make a record from JSON with particulars, commission and visit, from a file or the input',
  fewest: 1,
  most: 2,
  options: {},
  act: async ({ words: [record = '', file] }, around) => {
    const path = resolve(around.here, record)
    const begun = (await jsonFrom(around, file)) as RequestInput<'records.create'>
    return withProgram(around, dirname(path), async (program) => {
      const made = await ask(program, 'records.create', { ...begun, fileName: basename(path) })
      around.print(made.path)
      return 0
    })
  },
}

const importing: Verb = {
  name: 'import',
  follows: 'RECORD.wmk PHOTOGRAPH...',
  does: 'take photographs into a record, each as an exhibit; refused ones are named and the others go in',
  fewest: 2,
  most: 5001,
  options: { panel: { type: 'string' }, 'made-by': { type: 'string' } },
  act: (said, around) =>
    onRecord(said, around, false, async (begun) => {
      const { taken, refused } = await ask(begun, 'exhibits.import', {
        taskId: crypto.randomUUID(),
        sources: said.words.slice(1).map((file) => ({ from: 'file', path: resolve(around.here, file) })),
        panelId: typeof said.options.panel === 'string' ? said.options.panel : null,
        view: null,
        madeBy: String(said.options['made-by'] ?? ''),
      })
      for (const { number } of taken) around.print(`E ${number}`)
      for (const { fileName, problem } of refused) around.say(`${fileName}: ${problem.message}`)
      return refused.length === 0 ? 0 : 1
    }),
}

const issue: Verb = {
  name: 'issue',
  follows: 'RECORD.wmk REPORT.pdf',
  does: 'issue the next edition of the report and write it to a file',
  fewest: 2,
  most: 2,
  options: { ...paperOption, ...replace, reason: { type: 'string' } },
  act: async (said, around) => {
    const chosen = paperOf(said)
    return onRecord(said, around, false, async (begun) => {
      const { number } = await ask(begun, 'edition.issue', {
        commandId: crypto.randomUUID(),
        paper: chosen,
        reason: String(said.options.reason ?? ''),
      })
      const path = resolve(around.here, said.words[1] ?? '')
      await writeServed(await begun.behind.edition(number ?? 0), path, said.options.replace === true)
      around.print(path)
      return 0
    })
  },
}

const report: Verb = {
  name: 'report',
  follows: 'RECORD.wmk REPORT.pdf',
  does: 'write a preview of the report to a file; nothing is issued',
  fewest: 2,
  most: 2,
  options: { ...paperOption, ...replace },
  act: async (said, around) => {
    const chosen = paperOf(said)
    return onRecord(said, around, true, async (begun) => {
      const { document } = await ask(begun, 'report.preview', { paper: chosen })
      const path = resolve(around.here, said.words[1] ?? '')
      await writeServed(await begun.behind.document(document), path, said.options.replace === true)
      around.print(path)
      return 0
    })
  },
}

const table: Verb = {
  name: 'table',
  follows: 'RECORD.wmk REGISTER',
  does: 'print a register as CSV: panels, findings, spots, parts, claims, corrections, exhibits or carNumbers',
  fewest: 2,
  most: 2,
  options: {},
  act: (said, around) =>
    onRecord(said, around, true, async (begun) => {
      const register = said.words[1] as RegisterName & RequestInput<'register.table'>['register']
      around.print((await ask(begun, 'register.table', { register })).csv.trimEnd())
      return 0
    }),
}

const verify: Verb = {
  name: 'verify',
  follows: 'RECORD.wmk',
  does: 'recompute the whole hash chain of the journal; exit code 1 when it does not hold',
  fewest: 1,
  most: 1,
  options: {},
  act: (said, around) =>
    onRecord(said, around, true, async (begun) => {
      const { rows, sound, firstBad } = await ask(begun, 'record.verify', {})
      if (sound) around.print(`${rows} journal rows, and the chain holds`)
      else around.say(`The journal was changed after it was written: row ${firstBad} is the first that does not hold.`)
      return sound ? 0 : 1
    }),
}

/** Verbs that act on a record by requests of the contract alone. */
export const recordVerbs: readonly Verb[] = [make, importing, issue, report, table, verify]
