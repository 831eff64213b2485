import { z } from 'zod'
import type { Acknowledgement } from './record.ts'

/** One line of the contract: the schema of the input, and the type of the answer. */
export interface RequestLine<Input extends z.ZodType, Output> {
  readonly input: Input
  /** Carries the type only; never set. */
  readonly output?: Output
  /** True when the request changes the record; such a request carries a `commandId`. */
  readonly changes: boolean
}

/** A request that asks and changes no record. */
export const asking =
  <Output>() =>
  <Shape extends z.ZodRawShape>(shape: Shape): RequestLine<z.ZodObject<Shape, z.core.$strict>, Output> => ({
    input: z.strictObject(shape),
    changes: false,
  })

/** Chosen by the sender; the same id sent again is answered with the first acknowledgement. */
export const commandId = z.uuid()

/** A request that changes the open record. */
export const changing = <Shape extends z.ZodRawShape>(
  shape: Shape,
): RequestLine<z.ZodObject<Shape & { commandId: typeof commandId }, z.core.$strict>, Acknowledgement> => ({
  input: z.strictObject({ commandId, ...shape }),
  changes: true,
})

const path = z.string().min(1).max(4096)

/** Where photographs and reference sheets come from: bytes already handed in through the door's upload, or a file of this machine. */
export const photographSource = z.discriminatedUnion('from', [
  z.strictObject({ from: z.literal('upload'), upload: z.uuid() }),
  z.strictObject({ from: z.literal('file'), path }),
])
