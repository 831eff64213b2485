/** Something a claim can speak of in the terms of a sheet, with the values it can have. */
export interface TermVariable {
  readonly variable: string
  readonly name: string
  /** `other parts`: whether a part came off another car, which is no question of how this one was built. */
  readonly about: 'as built' | 'other parts'
  /** `dates`: the values are stretches of days in order. */
  readonly kind: 'choice' | 'dates'
  readonly values: readonly { readonly id: string; readonly name: string }[]
  /** Values taken together under one name, such as the months of a year. */
  readonly groups: readonly { readonly id: string; readonly name: string; readonly values: readonly string[] }[]
}

/** The terms of one reference sheet of the record. */
export interface SheetTerms {
  readonly sheetId: string
  readonly title: string
  readonly variables: readonly TermVariable[]
  /** Numbers whose writing it knows, by name. */
  readonly numbers: readonly string[]
}
