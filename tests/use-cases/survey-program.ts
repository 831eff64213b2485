import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { UseCase } from '../../electron/use-cases/program.ts'
import { type RunningProgram, startProgram } from '../../electron/use-cases/running-program.ts'
import { useCases } from '../../electron/use-cases/use-cases.ts'
import type { ProgramEvent, RequestInput, RequestName, RequestOutput } from '../../shared-types/contract.ts'
import type { FindingDraft } from '../../shared-types/finding.ts'
import type { Problem } from '../../shared-types/problem.ts'
import { ProblemError } from '../../shared-types/problem-error.ts'
import { beginning } from '../record/sample-record.ts'

type Unsent<N extends RequestName> = Omit<RequestInput<N>, 'commandId'>

export interface Survey {
  readonly program: RunningProgram
  readonly folder: string
  readonly events: ProgramEvent[]
  /** Asks as a door does after its checks; a fresh command id is added. */
  ask<N extends RequestName>(name: N, input: Unsent<N>): Promise<RequestOutput<N>>
  /** The problem a request is refused with; fails when it is not refused. */
  refusal<N extends RequestName>(name: N, input: Unsent<N>): Promise<Problem>
  end(): Promise<void>
}

/** A program on a folder of its own, with a new record open unless told otherwise; its clock moves a second a question. */
export async function startSurvey({ begin = true }: { begin?: boolean } = {}): Promise<Survey> {
  const folder = mkdtempSync(join(tmpdir(), 'survey-'))
  const events: ProgramEvent[] = []
  let moment = Date.parse('2026-05-14T10:00:00.000Z')
  const program = startProgram({
    recordsFolder: join(folder, 'records'),
    scratchFolder: join(folder, 'scratch'),
    now: () => new Date(moment).toISOString(),
    tell: (event) => events.push(event),
  })
  const survey: Survey = {
    program,
    folder,
    events,
    ask: (name, input) => {
      moment += 1000
      const act = useCases[name] as UseCase<RequestName>
      const whole = { commandId: randomUUID(), ...input } as RequestInput<RequestName>
      return act(program, whole) as Promise<never>
    },
    refusal: async (name, input) => {
      try {
        await survey.ask(name, input)
      } catch (fault) {
        if (fault instanceof ProblemError) return fault.problem
        throw fault
      }
      throw new Error(`${name} was not refused.`)
    },
    end: async () => {
      await program.end()
      rmSync(folder, { recursive: true, force: true })
    },
  }
  const { particulars, commission, visit } = beginning
  if (begin) await survey.ask('records.create', { fileName: 'sedge', particulars, commission, visit })
  return survey
}

/** An ordinary finding: rust seen on the left front wing. */
export const rust: FindingDraft = {
  panelId: 'front-side.L',
  kind: 'corrosion',
  layer: 'skin',
  extent: null,
  lengthMm: null,
  widthMm: null,
  depthMm: null,
  sizeUncertaintyMm: null,
  severity: 'marked',
  urgency: 'later',
  action: 'watch',
  learned: 'seen',
  learnedFrom: '',
  grade: null,
  suspectedCause: '',
  dangerous: false,
  exhibits: [],
  note: '',
}
