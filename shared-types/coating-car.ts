import type { PanelId } from './panel.ts'

/** One panel on the scale of the whole car: thickness of its spots as put right, µm, and the same as shares of the scale. */
export interface CarFilmRow {
  readonly panelId: PanelId
  readonly name: string
  readonly spots: number
  readonly leastUm: number
  readonly middleUm: number
  readonly mostUm: number
  /** True when the thickest spot went beyond its gauge. */
  readonly mostOrMore: boolean
  readonly at: { readonly least: number; readonly middle: number; readonly most: number }
  /** Chance that its film belongs to another paint job than that of most panels; null where too little was read. */
  readonly otherChance: number | null
}

/** Every panel read on one scale, what its films are compatible with, left against right, and steps at seams. */
export interface CoatingCar {
  readonly rows: readonly CarFilmRow[]
  /** Marks of the scale, µm and share of its length; the scale is logarithmic. */
  readonly ticks: readonly { readonly um: number; readonly at: number }[]
  /** Populations of film in words, with their chances; or why there are none. */
  readonly films: readonly string[]
  readonly sides: readonly string[]
  readonly seams: readonly string[]
  /** Spots whose reading something speaks against: a failed check, an edge too near, what lies below. */
  readonly marked: readonly { readonly spot: number; readonly why: readonly string[] }[]
  readonly cannotTell: string
  readonly textAlternative: string
}
