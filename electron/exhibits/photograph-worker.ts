import sharp from 'sharp'
import { lookAtPhotograph } from './look-at-photograph.ts'
import type { PhotographWork } from './photograph-work.ts'

// Decoding stands in a process of its own, so that a picture that hangs or breaks the decoder costs only itself.
sharp.concurrency(1)
sharp.cache(false)
sharp.simd(true)

process.on('message', (work: PhotographWork) => {
  lookAtPhotograph(work).then(
    (seen) => process.send?.(seen),
    (fault: unknown) =>
      process.send?.({ refused: `It could not be read: ${fault instanceof Error ? fault.message : fault}` }),
  )
})
process.on('disconnect', () => process.exit(0))
