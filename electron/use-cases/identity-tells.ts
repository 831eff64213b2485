import type { IdentityAnswer } from '../../shared-types/identity-answer.ts'
import type { TellText, TellView } from '../../shared-types/identity-view.ts'
import type { Observation } from '../../shared-types/observation.ts'
import type { CompiledSheets } from '../sheets/reference/compile-sheets.ts'
import type { CompiledTell } from '../sheets/reference/compile-tells.ts'
import type { Noted } from './identity-evidence.ts'
import { numberWords } from './identity-number-words.ts'
import { sourceOf } from './identity-words.ts'

/** What getting there adds to a tell's effort of 1 (a glance) to 5 (a workshop and hours). The program's own scale, no source. */
const ACCESS_COST: { readonly [A in CompiledTell['tell']['access']]: number } = {
  'from outside': 0,
  'doors and lids open': 0,
  'from below': 1,
  'trim or a cover lifted': 1,
  'taken apart': 3,
}

/** One tell as its sheet describes it. */
export function tellText({ key, tell, values }: CompiledTell, compiled: CompiledSheets): TellText {
  return {
    key,
    name: tell.name,
    lookAt: tell.lookAt,
    how: tell.how,
    where: tell.where.words,
    panels: tell.where.panels,
    effort: tell.effort,
    access: tell.access,
    caution: tell.caution,
    source: sourceOf(compiled, key),
    unit: tell.unit,
    values,
    sketch: tell.sketch,
  }
}

/** One tell of the record's sheets, with what was noted of it. */
export function tellView(
  compiledTell: CompiledTell,
  compiled: CompiledSheets,
  observations: readonly Observation[],
  bits: number | null,
  toldBy: string | null = null,
): TellView {
  const { key, tell } = compiledTell
  const cost = tell.effort + ACCESS_COST[tell.access]
  return {
    ...tellText(compiledTell, compiled),
    bits,
    worth: bits === null ? null : bits / cost,
    toldBy,
    observation: observations.find((row) => row.tell === key) ?? null,
  }
}

/** Tells with what each is worth; of one whose marks were read as part of a number nothing is left to look at. */
export function tellViews(compiled: CompiledSheets, answer: IdentityAnswer, noted: Noted): readonly TellView[] {
  const worth = new Map(answer.worths?.tells.map(({ tell, bits }) => [tell, bits]))
  const told = new Map(
    noted.numbers.flatMap((number) =>
      number.likelihood === null ? [] : number.standsFor.map((tell) => [tell, numberWords(number)] as const),
    ),
  )
  return compiled.tells
    .map((tell) => {
      const toldBy = told.get(tell.key) ?? null
      return tellView(
        tell,
        compiled,
        noted.observations,
        toldBy === null ? (worth.get(tell.key) ?? null) : null,
        toldBy,
      )
    })
    .toSorted((one, other) => (other.bits ?? -1) - (one.bits ?? -1))
}
