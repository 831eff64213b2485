import { useCallback, useState } from 'react'
import type { Problem } from '../../shared-types/problem.ts'
import { problemOf } from '../store/ask.ts'
import { forgetDraft, rememberDraft, useDraftStore, useNameInRecord } from '../store/draft-store.ts'

export interface EntryField<Value> {
  readonly value: Value
  readonly onChange: (value: Value) => void
  readonly problem: string | null
  /** The form opens with the focus here. */
  readonly autoFocus?: true
}

export interface Entry<Draft extends object> {
  readonly draft: Draft
  readonly set: (part: Partial<Draft>) => void
  /** Value, change and problem of one field, to spread onto a field of the page. */
  readonly field: <Name extends keyof Draft & string>(name: Name) => EntryField<Draft[Name]>
  readonly problem: Problem | null
  /** The problem when it belongs to no field that is on the form. */
  readonly problemOfAll: Problem | null
  readonly busy: boolean
  /** True when something was typed that is not kept yet. */
  readonly begun: boolean
  readonly keep: () => Promise<void>
  /** Throws away what was typed. */
  readonly startOver: () => void
}

interface EntryPlan<Draft extends object> {
  /** Name under which what is typed is remembered; one for each row: `claim.amend 3`. It holds within the open record. */
  readonly name: string
  /** True for what belongs to no record that is open: a record to be begun. */
  readonly ofNoRecord?: boolean
  readonly initial: Draft
  /** Name of the field the form opens at, where it is not the first. */
  readonly focusOn?: string | undefined
  /** Sends the entry; what it throws is shown and nothing typed is lost. */
  readonly keep: (draft: Draft) => Promise<unknown>
  /** Called after it is durable. */
  readonly kept: () => void
}

/** What is being entered in a form: remembered while it is typed, forgotten once it is kept. */
export function useEntry<Draft extends object>(plan: EntryPlan<Draft>): Entry<Draft> {
  const inRecord = useNameInRecord(plan.name)
  const name = plan.ofNoRecord === true ? plan.name : inRecord
  const remembered = useDraftStore((state) => state.drafts[name] as Draft | undefined)
  const [problem, setProblem] = useState<Problem | null>(null)
  const [busy, setBusy] = useState(false)
  const draft = remembered ?? plan.initial
  const set = useCallback(
    (part: Partial<Draft>) => {
      const now = (useDraftStore.getState().drafts[name] as Draft | undefined) ?? plan.initial
      rememberDraft(name, { ...now, ...part })
      setProblem(null)
    },
    [name, plan.initial],
  )
  const named = (part: string): boolean => problem?.field?.split('.').includes(part) ?? false
  const keep = async () => {
    if (busy) return
    setBusy(true)
    try {
      await plan.keep((useDraftStore.getState().drafts[name] as Draft | undefined) ?? plan.initial)
      forgetDraft(name)
      setProblem(null)
      plan.kept()
    } catch (thrown) {
      setProblem(problemOf(thrown))
    } finally {
      setBusy(false)
    }
  }
  return {
    draft,
    set,
    field: (part) => ({
      value: draft[part],
      onChange: (value) => set({ [part]: value } as unknown as Partial<Draft>),
      problem: named(part) ? (problem?.message ?? null) : null,
      ...(plan.focusOn === part ? { autoFocus: true } : {}),
    }),
    problem,
    problemOfAll: problem !== null && !Object.keys(draft).some(named) ? problem : null,
    busy,
    begun: remembered !== undefined,
    keep,
    startOver: () => {
      forgetDraft(name)
      setProblem(null)
    },
  }
}
