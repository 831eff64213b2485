import type { CutLine } from './coating-cut.ts'
import type { PlanPoint, ViewId } from './finding.ts'
import type { PanelId } from './panel.ts'

/** A figure and the ends of its interval; `words` says all of it, also what share the interval is worth. */
export interface MappedExtent {
  readonly low: number
  readonly middle: number
  readonly high: number
  /** Null where no share may be named; the words say why. */
  readonly coverage: number | null
  readonly words: string
}

/** One flat band of a map: everything from `from` up to the next band. View millimetres, absolute M, L and Z. */
export interface MapBand {
  readonly from: number
  /** Number of the band among all those of the layer, 0 the lowest; its colour follows from it. */
  readonly level: number
  readonly colour: string
  readonly path: string
  /** Where on the panel the figure of its contour may stand, best first; none where the contour does not cross it. */
  readonly places: readonly PlanPoint[]
}

/** One thing drawn over the panel: thickness, its uncertainty, or the chance of filler. */
export interface MapLayer {
  readonly id: 'thickness' | 'uncertainty' | 'filler chance'
  readonly title: string
  /** Where each band after the lowest begins, µm or %, rising; also those nothing of the panel reaches. */
  readonly limits: readonly number[]
  /** The same as they are printed in the unit of the record. */
  readonly printed: { readonly unit: string; readonly limits: readonly string[] }
  /** Colour of each band, one more than there are limits. */
  readonly colours: readonly string[]
  readonly bands: readonly MapBand[]
}

/** A spot as it stands on the map. */
export interface MappedSpot {
  readonly spot: number
  readonly at: PlanPoint
  /** Mean of its readings put right by the gauge's checks; a least value where `orMore`; null where the gauge gave none. */
  readonly um: number | null
  /** The same as read. */
  readonly readUm: number | null
  readonly orMore: boolean
  /** Standard uncertainty of the gauge there, µm; null where it gave no value. */
  readonly uncertaintyUm: number | null
  /** What is to be known of this reading: checks that are missing or failed, an edge too near. */
  readonly flags: readonly string[]
  /** True where something speaks against the reading itself, not merely a check that is missing. */
  readonly marked: boolean
}

/** What the readings of one panel say of its coating. `problem` says why there is no map, and what would make one. */
export interface CoatingMap {
  readonly panelId: PanelId
  readonly view: ViewId | null
  readonly spots: readonly MappedSpot[]
  readonly problem: string | null
  readonly layers: readonly MapLayer[]
  /** The line through the thickest place, and the rule it follows; null where nothing counts as filler. */
  readonly cut: (CutLine & { readonly rule: string }) | null
  readonly film: { readonly um: number; readonly words: string } | null
  readonly fillerArea: MappedExtent | null
  readonly fillerVolume: MappedExtent | null
  readonly assessedM2: number
  /** Surface behind bumpers, lamps and the like, and where no gauge reads; null where there is no map. */
  readonly notAssessedM2: number | null
  readonly thresholdUm: number
  readonly leftOut: readonly string[]
  /** Where the next reading is worth most, best first, with the reason. */
  readonly next: readonly { readonly at: PlanPoint; readonly words: string }[]
  readonly stopping: string
  readonly gauge: string
  /** What the gauge's checks say, what was put right by them, and which readings they do not stand behind. */
  readonly checks: readonly string[]
  /** What the surface is compatible with in words of the trade, with its chance; empty where the car has no film to compare with. */
  readonly conclusion: string
  readonly classes: readonly string[]
  /** The ranges the words rest on, with author and date. */
  readonly ranges: string
  /** Body solder told from filler where both modes of a gauge were read at one place. */
  readonly modes: readonly string[]
  readonly method: string
  /** What no map of thickness can tell. */
  readonly cannotTell: string
}
