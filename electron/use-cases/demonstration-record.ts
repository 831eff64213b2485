import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { isAbsolute } from 'node:path'
import { z } from 'zod'
import { type RequestInput, type RequestName, requests } from '../../shared-types/contract.ts'
import { instant } from '../../shared-types/units.ts'
import { resourcePath } from '../places-on-disk.ts'

/** Everything the survey of the demonstration car asked for, as the door would have received it. */
export interface DemonstrationSurvey {
  readonly made: string
  readonly create: RequestInput<'records.create'>
  readonly steps: readonly DemonstrationStep[]
}
export type DemonstrationStep = {
  [N in RequestName]: { readonly at: string; readonly request: N; readonly input: RequestInput<N> }
}[RequestName]

const requestName = z.enum(Object.keys(requests) as [RequestName, ...RequestName[]])
const surveyFile = z.strictObject({
  made: instant,
  create: requests['records.create'].input,
  commands: z.array(z.strictObject({ at: instant, request: requestName, input: z.record(z.string(), z.unknown()) })),
})

/** A UUID of version 8 (RFC 9562, 5.8) that is the same for the same step of the survey. */
export function stepId(at: number, request: string): string {
  const hash = createHash('sha256').update(`demonstration ${at} ${request}`).digest('hex')
  return `${hash.slice(0, 8)}-${hash.slice(8, 12)}-8${hash.slice(13, 16)}-8${hash.slice(17, 20)}-${hash.slice(20, 32)}`
}

/** Photographs are named in the file from its own folder; a use case takes the path of a file of this machine. */
function withWholePaths(input: Record<string, unknown>): Record<string, unknown> {
  if (!Array.isArray(input.sources)) return input
  const sources = input.sources.map((source: { from: string; path: string }) =>
    isAbsolute(source.path) ? source : { ...source, path: resourcePath('demonstration', ...source.path.split('/')) },
  )
  return { ...input, sources }
}

/**
 * Reads `resources/demonstration/record.json` and checks every step with the schema its request has at the door.
 * Throws when a step does not pass, naming it: the demonstration is data, and bad data must not become a record.
 */
export function readDemonstration(): DemonstrationSurvey {
  const file = surveyFile.parse(JSON.parse(readFileSync(resourcePath('demonstration', 'record.json'), 'utf8')))
  const steps = file.commands.map((command, at) => {
    const { input: schema, changes } = requests[command.request]
    const whole = withWholePaths(command.input)
    const read = schema.safeParse(changes ? { ...whole, commandId: stepId(at, command.request) } : whole)
    if (!read.success) {
      throw new Error(
        `Step ${at + 1} of the demonstration, ${command.request}, is not well formed: ${read.error.message}`,
      )
    }
    return { at: command.at, request: command.request, input: read.data } as DemonstrationStep
  })
  return { made: file.made, create: file.create, steps }
}
