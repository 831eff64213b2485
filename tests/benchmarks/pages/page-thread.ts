import type { Browser, Page } from 'playwright'

/** The part we read of an entry of the browser's own record, times in µs. */
interface Entry {
  readonly name: string
  readonly cat: string
  readonly ph: string
  readonly pid: number
  readonly tid: number
  readonly ts: number
  /** Time the thread itself ran, without what others took of the processor meanwhile. */
  readonly tdur?: number
}

/** What the page's own thread did between two marks, ms of its processor time. */
export interface ThreadTime {
  /** All tasks together: script, style, layout, paint, and handing the picture over. */
  readonly all: number
  /** The longest task; everything of one frame is one task. */
  readonly longest: number
}

const MARKS = 'blink.user_timing'
const TASKS = 'toplevel'

/** Does something with the page while the browser records its threads; answers one time for each `begins` and `ends`. */
export async function threadTimes(
  browser: Browser,
  page: Page,
  act: () => Promise<unknown>,
): Promise<readonly ThreadTime[]> {
  await browser.startTracing(page, { categories: [MARKS, TASKS] })
  await act()
  const record = JSON.parse((await browser.stopTracing()).toString()) as {
    traceEvents: readonly Entry[]
  }
  const marks = record.traceEvents
    .filter(({ cat, name }) => cat.split(',').includes(MARKS) && / (begins|ends)$/.test(name))
    .sort((a, b) => a.ts - b.ts)
  const tasks = record.traceEvents.filter(
    ({ name, ph, pid, tid }) =>
      name === 'ThreadControllerImpl::RunTask' && ph === 'X' && pid === marks[0]?.pid && tid === marks[0]?.tid,
  )
  return marks.flatMap((from, at) => {
    const to = marks[at + 1]
    if (!from.name.endsWith('begins') || to === undefined) return []
    const own = tasks
      .filter(({ ts }) => ts > from.ts && ts < to.ts)
      .map(({ tdur }) => {
        if (tdur === undefined) throw new Error('This browser does not say how long its threads ran.')
        return tdur / 1000
      })
    return [
      {
        all: own.reduce((sum, time) => sum + time, 0),
        longest: Math.max(0, ...own),
      },
    ]
  })
}
