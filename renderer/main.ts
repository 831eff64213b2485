import './look/look.css'
import { applyTokens } from './look/apply-tokens.ts'
import { placeCode } from './place-code.ts'
import { placeList } from './store/place-list.ts'
import { placeAtStart, sheetAtStart, sheetNames } from './store/start-of-page.ts'

/** Longest time the program waits for its first frame; a page that is not seen draws none. */
const LONGEST_WAIT_MS = 100

/** Resolves once the first frame has been drawn: whatever is fetched before keeps its picture waiting. */
const firstFrame = (): Promise<void> =>
  new Promise((drawn) => {
    setTimeout(drawn, LONGEST_WAIT_MS)
    requestAnimationFrame(() => {
      const afterwards = new MessageChannel()
      afterwards.port1.onmessage = () => drawn()
      afterwards.port2.postMessage(null)
    })
  })

// The page draws nothing before this has run, so it is short: it tells the first frame the little that only this machine
// knows, which sheet and which place, and leaves the rest of the program until that has been drawn.
const [place, sheetName] = [placeAtStart(), sheetAtStart()]
applyTokens(sheetName)
document.querySelectorAll('.rail-row').forEach((row, index) => {
  if (placeList[index]?.id === place) row.setAttribute('aria-current', 'page')
  else row.removeAttribute('aria-current')
})
document.querySelectorAll('.sheet-name').forEach((choice, index) => {
  choice.setAttribute('aria-pressed', String(sheetNames[index] === sheetName))
})

async function goOn(): Promise<void> {
  await firstFrame()
  const program = import('./begin.tsx')
  void placeCode[place]()
  const { begin } = await program
  begin()
}
// Not awaited: the program shares modules with this one, and those are whole only once this one has ended.
void goOn()
