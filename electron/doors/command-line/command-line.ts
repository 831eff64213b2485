import { parseArgs } from 'node:util'
import { ProblemError } from '../../../shared-types/problem-error.ts'
import type { Said, Surroundings, Verb } from './verb.ts'
import { WrongWords } from './verb.ts'

const optionWords = ({ options }: Verb): string =>
  Object.entries(options)
    .map(([name, { type }]) => `[--${name}${type === 'string' ? ' ...' : ''}]`)
    .join(' ')

/** What there is to say, one verb a line. */
export function help(verbs: readonly Verb[]): string {
  const lines = verbs.map((verb) => {
    const said = [verb.name, verb.follows, optionWords(verb)].filter((piece) => piece !== '').join(' ')
    return `  ${said}\n      ${verb.does}`
  })
  return [
    'witnessmark VERB ...',
    '',
    ...lines,
    '',
    'Paths are meant from the folder you stand in. What is asked for goes to the output, everything else to the error',
    'stream. Exit codes: 0 done, 1 the work could not be done or did not hold, 2 the words were wrong.',
  ].join('\n')
}

function parse(verb: Verb, given: readonly string[]): Said {
  try {
    const { values, positionals } = parseArgs({
      args: [...given],
      options: verb.options,
      allowPositionals: true,
      strict: true,
    })
    if (positionals.length < verb.fewest || positionals.length > verb.most) {
      throw new WrongWords(`Say: ${[verb.name, verb.follows].join(' ').trim()}`)
    }
    return { words: positionals, options: values as Said['options'] }
  } catch (thrown) {
    throw new WrongWords(thrown instanceof Error ? thrown.message : String(thrown))
  }
}

/** On a page a problem stands under its field; here the field is named. */
function saidWithItsField({ message, problem: { field } }: ProblemError): string {
  return field === undefined || message.includes(`"${field}"`) ? message : `"${field}": ${message}`
}

/** Does what the words say and answers the exit code: 0 done, 1 not done, 2 wrong words. Errors are one line each. */
export async function commandLine(
  words: readonly string[],
  verbs: readonly Verb[],
  around: Surroundings,
): Promise<number> {
  const [name = '--help', ...rest] = words
  if (['--help', '-h', 'help'].includes(name) || rest.includes('--help')) {
    around.print(help(verbs))
    return 0
  }
  try {
    const verb = verbs.find((one) => one.name === name)
    if (verb === undefined) throw new WrongWords(`There is no verb "${name}". Say --help for what there is.`)
    return await verb.act(parse(verb, rest), around)
  } catch (thrown) {
    if (thrown instanceof WrongWords) {
      around.say(thrown.message)
      return 2
    }
    if (thrown instanceof ProblemError) around.say(saidWithItsField(thrown))
    else
      around.say(`The program failed: ${thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown)}`)
    return 1
  }
}
