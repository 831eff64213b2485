/**
 * Two stacks that live in the journal. Each row says what undo and redo would act on after it, and what lay below
 * it on the stack it was put on, so that undo and redo each cost one look-up however long the journal is.
 */
export interface Stacks {
  /** Journal row that undo would turn back after this row; null when there is none. */
  readonly undoTop: number | null
  /** Journal row, itself an undo, that redo would turn back after this row; null when there is none. */
  readonly redoTop: number | null
  /** Top of the stack this row was put on, before it was put there. */
  readonly below: number | null
}

export const emptyStacks: Stacks = { undoTop: null, redoTop: null, below: null }

/**
 * After a plain command. What cannot be taken back (an issued edition) is stepped over: it is not put on the stack,
 * and undo goes on to the command before it. Either way there is nothing left to do again.
 */
export const afterCommand = (before: Stacks, number: number, undoable: boolean): Stacks =>
  undoable
    ? { undoTop: number, redoTop: null, below: before.undoTop }
    : { undoTop: before.undoTop, redoTop: null, below: null }

/** After row `number` turned back `undone`, the top of the undo stack. */
export const afterUndo = (before: Stacks, number: number, undone: Stacks): Stacks => ({
  undoTop: undone.below,
  redoTop: number,
  below: before.redoTop,
})

/** After row `number` turned back `undo`, the top of the redo stack. */
export const afterRedo = (before: Stacks, number: number, undo: Stacks): Stacks => ({
  undoTop: number,
  redoTop: undo.below,
  below: before.undoTop,
})
