import { useEffect } from 'react'
import type { RequestInput } from '../../../shared-types/contract.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ask, problemOf } from '../../store/ask.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { sameMarks } from './same-marks.ts'
import { useWalkStore } from './walk-store.ts'
import { sheetShowing } from './walking.ts'

/** Runs one asking after another and drops answers that came too late. */
function latestOnly<Answer>(take: (answer: Answer) => void): (asking: () => Promise<Answer>) => void {
  let number = 0
  return (asking) => {
    number += 1
    const own = number
    asking().then(
      (answer) => {
        if (own === number) take(answer)
      },
      (thrown: unknown) => {
        if (own === number) useRecordStore.setState({ problem: problemOf(thrown) })
      },
    )
  }
}

const takeMarks = latestOnly<Awaited<ReturnType<typeof ask<'figures.marks'>>>>((marks) =>
  useWalkStore.setState((state) => ({ marks: sameMarks(state.marks, marks) })),
)
const takeHandMarks = latestOnly<Awaited<ReturnType<typeof ask<'figures.marks'>>>>((handMarks) =>
  useWalkStore.setState({ handMarks }),
)
const takeFigure = latestOnly<Awaited<ReturnType<typeof ask<'figures.plan'>>>>((figure) =>
  useWalkStore.setState({ figure }),
)
const takeJudgement = latestOnly<Awaited<ReturnType<typeof ask<'judgement.view'>>>>((judgement) =>
  useWalkStore.setState({ judgement }),
)

const takeTells = latestOnly<Awaited<ReturnType<typeof ask<'tells.ofPanel'>>>>((tells) =>
  useWalkStore.setState((state) => (state.tells.length === 0 && tells.length === 0 ? state : { tells })),
)

/** Callouts are set anew once the reader has rested on a panel; the accent itself follows the hand at once. */
const REST_MS = 120
const JUDGE_MS = 300

/** Asks for the plan, for what the record says on it, and for what to look at next, whenever those may have changed. */
export function useWalkData(record: RecordView | null, inHand: string | null): void {
  // As text, so that the plan is asked for anew only when what it is drawn from differs.
  const drawnFrom = record === null ? null : JSON.stringify(planAsked(record))
  const journalNumber = record?.journalNumber
  const planSheet = useWalkStore((state) => state.planSheet)
  const pixelsPerMm = useWalkStore((state) => state.pixelsPerMm)
  useEffect(() => {
    if (drawnFrom === null) return
    takeFigure(() => ask('figures.plan', JSON.parse(drawnFrom) as RequestInput<'figures.plan'>))
  }, [drawnFrom])
  useEffect(() => {
    if (journalNumber === undefined || pixelsPerMm === null) return
    const { inHand: now } = useScreenStore.getState()
    takeMarks(() => ask('figures.marks', { sheet: planSheet, pixelsPerMm, inHand: now }))
  }, [journalNumber, planSheet, pixelsPerMm])
  useEffect(() => {
    if (pixelsPerMm === null || inHand === null) return
    const waiting = setTimeout(
      () => takeMarks(() => ask('figures.marks', { sheet: planSheet, pixelsPerMm, inHand })),
      REST_MS,
    )
    return () => clearTimeout(waiting)
  }, [inHand, planSheet, pixelsPerMm])
  const figure = useWalkStore((state) => state.figure)
  useEffect(() => {
    if (figure === null || inHand === null || pixelsPerMm === null || journalNumber === undefined) return
    const showing = sheetShowing(figure, inHand, planSheet)
    if (showing === planSheet) useWalkStore.setState({ handMarks: null })
    else takeHandMarks(() => ask('figures.marks', { sheet: showing, pixelsPerMm, inHand }))
  }, [figure, inHand, planSheet, pixelsPerMm, journalNumber])
  const hasSheets = (record?.sheets.length ?? 0) > 0
  useEffect(() => {
    if (journalNumber === undefined || inHand === null || !hasSheets) return
    const waiting = setTimeout(() => takeTells(() => ask('tells.ofPanel', { panelId: inHand })), REST_MS)
    return () => clearTimeout(waiting)
  }, [journalNumber, inHand, hasSheets])
  useEffect(() => {
    if (journalNumber === undefined) return
    const waiting = setTimeout(() => takeJudgement(() => ask('judgement.view', {})), JUDGE_MS)
    return () => clearTimeout(waiting)
  }, [journalNumber])
}
