import type { Caution } from '../../shared-types/caution.ts'
import type { CoatingCar } from '../../shared-types/coating-car.ts'
import type { CoatingChange } from '../../shared-types/coating-change.ts'
import type { CoatingCut } from '../../shared-types/coating-cut.ts'
import type { CoatingMap } from '../../shared-types/coating-map.ts'
import type { Edition, Paper } from '../../shared-types/edition.ts'
import type { KeptSample } from '../../shared-types/fastening-sample.ts'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import type { IdentityView } from '../../shared-types/identity-view.ts'
import type { Judgement } from '../../shared-types/judgement.ts'
import type { KeptPicture } from '../../shared-types/measuring-view.ts'
import type { NumberFormat } from '../../shared-types/number-format.ts'
import type { PanelList } from '../../shared-types/panel.ts'
import type { PartDefinition } from '../../shared-types/part.ts'
import type { PartsReported } from '../../shared-types/part-expectation.ts'
import type { RecordView } from '../../shared-types/record.ts'
import type { KeptTape } from '../../shared-types/tape-answer.ts'
import type { TimeLineView } from '../../shared-types/time-line-view.ts'

/** Which edition this is. A preview has no number yet and says so on every page. */
export interface EditionData {
  /** The edition's number, or null for a preview. */
  readonly number: number | null
  readonly reportNumber: string
  /** UTC with milliseconds; the one time that goes into the file. */
  readonly issuedAt: string
  readonly reason: string
  /** The edition this one replaces; null for the first. */
  readonly previous: Edition | null
  /** What changed in the record since the edition before, one sentence each. */
  readonly changes: readonly string[]
}

/** Size of a report rendering. */
export interface PictureSize {
  readonly widthPx: number
  readonly heightPx: number
}

/** What was computed of the record for its report. */
export interface ComputedContent {
  readonly judgement: Judgement
  /** What the car can still be by the record's reference sheets; null without a sheet. */
  readonly identity: IdentityView | null
  /** Numbers of 17 characters against the rule for them. */
  readonly numberFormat: NumberFormat
  /** Everything dated, narrowed together. */
  readonly timeLine: TimeLineView
  /** Parts against what the sheets expect, and interchange used; null without a sheet. */
  readonly partsJudged: PartsReported | null
  /** Maps of panels whose readings leave open how much filler there is. */
  readonly coatingMaps: readonly CoatingMap[]
  /** Cuts through the thickest place of those maps in which something counts as filler. */
  readonly coatingCuts: readonly CoatingCut[]
  /** Filler before and after each correction that cites readings. */
  readonly coatingChanges: readonly CoatingChange[]
  /** Every panel read on one scale. */
  readonly coatingCar: CoatingCar
  /** Measurements by tape or calliper, worked out again from their readings. */
  readonly measurements: readonly KeptTape[]
  /** Measures on photographs, measured again from their picks. */
  readonly photographMeasures: readonly KeptPicture[]
  /** Random samples of alike things, with what each says of the rest. */
  readonly samples: readonly KeptSample[]
}

/** Everything a report is made of. */
export interface ReportContent extends ComputedContent {
  readonly record: RecordView
  readonly panels: PanelList
  /** The parts list, and the name of a part's group as printed. */
  readonly parts: readonly PartDefinition[]
  readonly partGroups: Readonly<Record<string, string>>
  readonly cautions: readonly Caution[]
  readonly plan: PlanFigure
  /** Marks of each sheet to be printed, for the printed scale. */
  readonly marks: Readonly<Partial<Record<PlanSheet['id'], PlanMarks>>>
  readonly edition: EditionData
  readonly paper: Paper
  /** Size of every picture there is, by the number of its exhibit: what is needed to lay the pages out. */
  pictureSizes(): Promise<ReadonlyMap<number, PictureSize>>
  /**
   * A report rendering: an upright JPEG without metadata, whose bytes go into the report unchanged. Asked once for each
   * photograph that has a size and goes into the report.
   */
  picture(exhibitNumber: number): Promise<Uint8Array>
}
