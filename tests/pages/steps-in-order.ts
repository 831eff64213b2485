import { afterEach, beforeEach } from 'vitest'

/** One step builds on the one before: after a failure the rest of the file would only repeat it, and is left out. */
export function stepsInOrder(): void {
  let broken = false
  beforeEach(({ skip }) => {
    if (broken) skip()
  })
  afterEach(({ task }) => {
    broken ||= task.result?.state === 'fail'
  })
}
