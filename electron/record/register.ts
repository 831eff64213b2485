import type { RegisterName, RegisterRows } from '../../shared-types/record.ts'

/** How a property lies in its column. Null is NULL in every one of them; `list` is any nested value, as JSON. */
export type Lying = 'text' | 'whole' | 'real' | 'flag' | 'list'

export interface Register<R extends RegisterName> {
  readonly table: string
  /** Every property of the row, so that a new property of the contract cannot be forgotten here. */
  readonly columns: { readonly [Property in keyof RegisterRows[R]]-?: Lying }
  /** Properties kept since a later form, with what a journal row written before them is read to say. */
  readonly readsAs?: Partial<RegisterRows[R]>
}

/** Descriptions of some of the registers. */
export type Registers<Names extends RegisterName> = { readonly [R in Names]: Register<R> }
