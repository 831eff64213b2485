import type { Because } from './judgement.ts'

/** First and last day, both counted; null ends are open. */
export interface DatedWindow {
  readonly from: string | null
  readonly to: string | null
}

/** A window with its words: "1 March to 26 May 1960". */
export interface WordedWindow extends DatedWindow {
  readonly words: string
}

/** How a part's date stands to the building of the car. None of them says that anything was done on purpose. */
export type DateStanding =
  | 'may have come with the car'
  | 'later than the car'
  | 'earlier than usual'
  | 'not compared'
  | 'holds with the rest'
  | 'in a conflict'

/** One thing that happened, and what says when. */
export interface DatedRow {
  /** `car:built`, `part:engine-block`, `claim:2`: the same in figure and table. */
  readonly id: string
  readonly kind: 'car' | 'part' | 'paper' | 'claim' | 'visit' | 'work'
  readonly label: string
  /** The code or the words as read; empty where nothing is written on a thing. */
  readonly asRead: string
  /** State word of a part, verdict on a claim; empty otherwise. */
  readonly state: string
  /** What is said of this alone: readings of which one holds. Empty: nothing dates it but the rest. */
  readonly given: readonly WordedWindow[]
  /** Readings the rest leaves no room for. */
  readonly dropped: readonly (WordedWindow & { readonly because: string })[]
  /** Days left to it by everything together. */
  readonly narrowed: WordedWindow
  readonly standing: DateStanding
  /** The standing in a sentence, with by how much. */
  readonly standingWords: string
  /** Days of building that this date leaves by itself, with its lead time; null where it says nothing of the building. */
  readonly leavesForBuilding: WordedWindow | null
  readonly because: readonly Because[]
}

/** Things that cannot all be so: a smallest set, take one away and the rest can. */
export interface DateConflict {
  readonly number: number
  readonly title: string
  readonly cannotAllBe: readonly Because[]
  /** By how much they miss each other, where one part and the building are meant: "2 years 1 month". */
  readonly by: string | null
  /** Other grounds each of which leads to the same conflict in place of the last one named. */
  readonly alsoAgainst: readonly Because[]
  /** Parts that travel with the one in conflict and say the same: no further observation. */
  readonly travelWithIt: readonly string[]
  /** What would have to be otherwise, the fewest things first. */
  readonly waysOut: readonly string[]
  /** Rows of the time line it is about. */
  readonly rows: readonly string[]
}

/** A date or code that could not be read, or not as the sheet has it. */
export interface UnreadDate {
  readonly label: string
  readonly asRead: string
  readonly why: string
  readonly references: Because['references']
}

/** Everything dated on one car, and what it comes to. */
export interface TimeLineView {
  /** Why the build window was not inferred, and what to do; null when it was. */
  readonly problem: string | null
  /** Days the building is left, and how many days that is; null without any ground. */
  readonly built: (WordedWindow & { readonly days: number | null }) | null
  readonly rows: readonly DatedRow[]
  readonly conflicts: readonly DateConflict[]
  /** False: the search for conflicts was ended by its bound. */
  readonly allConflictsFound: boolean
  readonly unread: readonly UnreadDate[]
  /** Odometer readings in order of time, in a sentence. */
  readonly odometer: string
  /** What the time line rests on and cannot tell. */
  readonly method: string
}

/** Across a figure: 0 the left end of its axis, 1 the right. */
export interface FigureSpan {
  readonly from: number
  readonly to: number
}

/** A row of the figure: what is said alone, outlined; what the rest leaves of it, solid. */
export interface TimeLineFigureRow {
  readonly id: string
  readonly label: string
  /** The word beside the label: a code as read, a count of claims. */
  readonly beside: string
  readonly given: readonly FigureSpan[]
  readonly dropped: readonly FigureSpan[]
  readonly narrowed: FigureSpan | null
  /** Days of building it leaves by itself, as a thin line; null where it says nothing of it. */
  readonly leaves: FigureSpan | null
  /** True for the building itself, whose window runs down all rows. */
  readonly isBuilding: boolean
  readonly standing: DateStanding
  /** Numbers of the conflicts it is part of. */
  readonly conflicts: readonly number[]
  /** The row in words, for the table that says the same. */
  readonly words: string
}

/** Time line as plain geometry: drawn on screen and on the page. Heights are counted in rows. */
export interface TimeLineFigure {
  readonly rows: readonly TimeLineFigureRow[]
  /** Stretches of time that are drawn; between them time is left out and the axis is broken. */
  readonly stretches: readonly (FigureSpan & { readonly words: string })[]
  readonly ticks: readonly { readonly at: number; readonly kind: 'year' | 'month'; readonly label: string }[]
  /** Days left to the building; null where nothing dates it or an end is open. */
  readonly building: FigureSpan | null
  /** Each conflict with the rows it joins, by their place from the top. */
  readonly conflicts: readonly { readonly number: number; readonly rows: readonly number[] }[]
  readonly textAlternative: string
}
