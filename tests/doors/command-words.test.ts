import { Readable } from 'node:stream'
import { describe, expect, it } from 'vitest'
import { answer } from '../../electron/doors/answer.ts'
import { assessing } from '../../electron/doors/command-line/assess-verb.ts'
import { commandLine } from '../../electron/doors/command-line/command-line.ts'
import { computing } from '../../electron/doors/command-line/compute-verb.ts'
import { demonstration } from '../../electron/doors/command-line/demonstration-verb.ts'
import { opening } from '../../electron/doors/command-line/open-verb.ts'
import { recordVerbs } from '../../electron/doors/command-line/record-verbs.ts'
import type { Surroundings } from '../../electron/doors/command-line/verb.ts'
import type { RunningProgram } from '../../electron/use-cases/running-program.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { echoesBut, noProgram, standIn } from './stand-in.ts'

interface Ended {
  readonly code: number
  readonly output: string
  readonly errors: string
}

/** Runs the command line in this process, with a program behind it that has no records. */
async function witnessmark(words: readonly string[], input = ''): Promise<Ended> {
  const said = { output: '', errors: '' }
  const recordless = echoesBut('records.open', async () => {
    throw new ProblemError('record-missing', 'There is no record at this path. Choose another.')
  })
  const program = { ...noProgram, end: async () => {} } as RunningProgram
  const behind = { ...standIn(), ask: (name: string, asked: unknown) => answer(noProgram, recordless, name, asked) }
  const around: Surroundings = {
    here: '/nowhere',
    builtFolder: '/nowhere',
    input: Readable.from([input]),
    print: (line) => {
      said.output += `${line}\n`
    },
    say: (line) => {
      said.errors += `${line}\n`
    },
    begin: () => ({ program, behind }),
    stop: AbortSignal.abort(),
  }
  const code = await commandLine(words, [opening, ...recordVerbs, assessing, computing, demonstration], around)
  return { code, ...said }
}

const oneLine = /^[^\n]+\n$/

describe('computations on plain input', () => {
  it('are listed, and each says what it takes and answers', async () => {
    const { output } = await witnessmark(['compute', '--list'])
    const names = output
      .trim()
      .split('\n')
      .map((line) => line.split('\t')[0] ?? '')
    expect(names).toContain('rust-grade')
    for (const name of names) {
      const schemas = JSON.parse((await witnessmark(['compute', '--schema', name])).output)
      expect(schemas).toMatchObject({ name, input: { type: 'object' }, output: { type: 'object' } })
    }
  })

  it.each([
    ['a number out of its bounds', ['compute', 'univariate'], '{"values":[]}', /"values": Give at least 1/],
    ['wrong input', ['compute', 'convert-length'], '{"value":"one","from":"in","to":"mm"}', /"value" was refused/],
    ['no JSON', ['compute', 'convert-length'], 'one inch', /is not JSON/],
    ['a field it does not know', ['compute', 'univariate'], '{"values":[1],"more":2}', /"more" is not part/],
    ['a prototype', ['compute', 'univariate'], '{"values":[1],"__proto__":{}}', /may not be called/],
    ['an unknown computation', ['compute', 'constructor'], '{}', /There is no computation/],
  ])('refuse %s in one line, with nothing on the output', async (_what, words, input, says) => {
    const { code, output, errors } = await witnessmark(words, input)
    expect([code, output]).toEqual([1, ''])
    expect(errors).toMatch(says)
    expect(errors).toMatch(oneLine)
  })
})

describe('words', () => {
  it('are explained by --help', async () => {
    for (const words of [['--help'], [], ['issue', '--help']]) {
      const { code, output, errors } = await witnessmark(words)
      expect([code, errors]).toEqual([0, ''])
      for (const verb of [
        'open',
        'make',
        'import',
        'assess',
        'issue',
        'report',
        'table',
        'verify',
        'compute',
        'demo',
      ]) {
        expect(output).toMatch(new RegExp(`^ {2}${verb}\\b`, 'm'))
      }
    }
  })

  it.each([
    [['paint']],
    [['issue', 'barn.wmk']],
    [['verify', 'barn.wmk', 'another.wmk']],
    [['verify', 'barn.wmk', '--loud']],
    [['report', 'barn.wmk', 'x.pdf', '--paper', 'A3']],
    [['compute']],
  ])('that are wrong end with 2 and one line: %j', async (words) => {
    const { code, output, errors } = await witnessmark(words)
    expect([code, output]).toEqual([2, ''])
    expect(errors).toMatch(oneLine)
  })

  it('that name what is not there end with 1 and the problem in one line', async () => {
    for (const words of [
      ['verify', 'none.wmk'],
      ['make', 'new.wmk', 'none.json'],
      ['table', 'none.wmk', 'claims'],
    ]) {
      const { code, output, errors } = await witnessmark(words)
      expect([code, output]).toEqual([1, ''])
      expect(errors).toMatch(oneLine)
    }
  })
})
