import type { Entry, EntryField } from './useEntry.ts'

/** Value, change and problem of one field by its name. */
export type BindField<Draft extends object> = <Name extends keyof Draft & string>(name: Name) => EntryField<Draft[Name]>

/** Binds the fields of one part of an entry, such as the commission inside a new record. */
export function bindPart<Draft extends object, Part extends keyof Draft & string>(
  entry: Entry<Draft>,
  part: Part,
): Draft[Part] extends object ? BindField<Draft[Part]> : never {
  const bind = (name: string) => {
    const held = entry.draft[part] as Record<string, unknown>
    const mine = entry.problem?.field === `${part}.${name}`
    return {
      value: held[name],
      onChange: (value: unknown) => entry.set({ [part]: { ...held, [name]: value } } as unknown as Partial<Draft>),
      problem: mine ? (entry.problem?.message ?? null) : null,
    }
  }
  return bind as unknown as Draft[Part] extends object ? BindField<Draft[Part]> : never
}
