// Brings the named halves of `.built/` up to date before tests. What cannot be built is said and left as it was:
// tests that need it will fail.
import { buildInside, buildRenderer } from './steps/building.mjs'
import { say } from './steps/running.mjs'

const halves = { inside: buildInside, renderer: buildRenderer }
for (const [name, build] of Object.entries(halves)) {
  if (!process.argv.includes(name)) continue
  try {
    await build()
  } catch (fault) {
    say(fault instanceof Error ? fault.message : String(fault))
  }
}
