import { z } from 'zod'
import { lineText } from './units.ts'

/** What a fastening looks like; empty where it is not stated. Words of the trade, compared without regard to case. */
const fasteningForm = z.strictObject({
  head: lineText,
  drive: lineText,
  thread: lineText,
  plating: lineText,
  mark: lineText,
})

/** Whether paint, dirt and the print of the part beside it still lie across the edge of a fastening as they settled there. */
export const witnessMarks = z.enum(['not looked at', 'undisturbed', 'disturbed', 'none to see'])

/** Fastenings of one kind: what should be there and by whose word, and what is. */
export const fasteningFound = z.strictObject({
  expected: fasteningForm,
  /** Where the expectation comes from; a sheet, a like car, the other side of this one. */
  expectedBy: lineText,
  found: fasteningForm,
  witness: witnessMarks,
})
export type FasteningFound = z.infer<typeof fasteningFound>

/** What is looked at on a fastening, in this order. */
export const fasteningParts = ['head', 'drive', 'thread', 'plating', 'mark'] as const

/** A fastening expected against found. */
const fasteningCompared = z.strictObject({
  parts: z
    .array(
      z.strictObject({
        part: z.enum(fasteningParts),
        expected: z.string(),
        found: z.string(),
        standing: z.enum(['agrees', 'differs', 'not seen', 'nothing expected']),
      }),
    )
    .readonly(),
  /** How many of them differ. */
  differs: z.number().int().min(0),
  words: z.string(),
})
export type FasteningCompared = z.infer<typeof fasteningCompared>

/** Head, drive, thread, plating and mark of a fastening against what is expected, and its witness marks. */
export const fastening = {
  about: 'A fastening expected against found: head, drive, thread, plating, mark; and what its witness marks say.',
  input: fasteningFound,
  output: fasteningCompared,
}
