import { useEffect } from 'react'
import type { RequestInput, RequestName, RequestOutput } from '../../../shared-types/contract.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ask, problemOf } from '../../store/ask.ts'
import { LatestQuestion } from '../../store/latest-question.ts'
import { planAsked } from '../../store/plan-asked.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { sameMarks } from './same-marks.ts'
import { useWalkStore } from './walk-store.ts'
import { sheetShowing } from './walking.ts'

/** A question of the walk whose latest answer alone is taken; a problem is said for the whole page. */
function latestOf<Name extends RequestName>(
  name: Name,
  take: (answer: RequestOutput<Name>) => void,
): (input: RequestInput<Name>) => void {
  const questions = new LatestQuestion()
  return (input) =>
    questions.ask(
      () => ask(name, input),
      take,
      (thrown) => useRecordStore.setState({ problem: problemOf(thrown) }),
    )
}

const askMarks = latestOf('figures.marks', (marks) =>
  useWalkStore.setState((state) => ({ marks: sameMarks(state.marks, marks) })),
)
const askHandMarks = latestOf('figures.marks', (handMarks) => useWalkStore.setState({ handMarks }))
const askFigure = latestOf('figures.plan', (figure) => useWalkStore.setState({ figure }))
const askJudgement = latestOf('judgement.view', (judgement) => useWalkStore.setState({ judgement }))
const askTells = latestOf('tells.ofPanel', (tells) =>
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
    askFigure(JSON.parse(drawnFrom) as RequestInput<'figures.plan'>)
  }, [drawnFrom])
  useEffect(() => {
    if (journalNumber === undefined || pixelsPerMm === null) return
    const { inHand: now } = useScreenStore.getState()
    askMarks({ sheet: planSheet, pixelsPerMm, inHand: now })
  }, [journalNumber, planSheet, pixelsPerMm])
  useEffect(() => {
    if (pixelsPerMm === null || inHand === null) return
    const waiting = setTimeout(() => askMarks({ sheet: planSheet, pixelsPerMm, inHand }), REST_MS)
    return () => clearTimeout(waiting)
  }, [inHand, planSheet, pixelsPerMm])
  const figure = useWalkStore((state) => state.figure)
  useEffect(() => {
    if (figure === null || inHand === null || pixelsPerMm === null || journalNumber === undefined) return
    const showing = sheetShowing(figure, inHand, planSheet)
    if (showing === planSheet) useWalkStore.setState({ handMarks: null })
    else askHandMarks({ sheet: showing, pixelsPerMm, inHand })
  }, [figure, inHand, planSheet, pixelsPerMm, journalNumber])
  const hasSheets = (record?.sheets.length ?? 0) > 0
  useEffect(() => {
    if (journalNumber === undefined || inHand === null || !hasSheets) return
    const waiting = setTimeout(() => askTells({ panelId: inHand }), REST_MS)
    return () => clearTimeout(waiting)
  }, [journalNumber, inHand, hasSheets])
  useEffect(() => {
    if (journalNumber === undefined) return
    const waiting = setTimeout(() => askJudgement({}), JUDGE_MS)
    return () => clearTimeout(waiting)
  }, [journalNumber])
}
