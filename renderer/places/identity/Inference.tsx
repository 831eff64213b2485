import { useState } from 'react'
import type { SettledQuestion } from '../../../shared-types/identity-asking.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { change } from '../../store/ask.ts'
import { useAnswer, useChange } from '../../store/use-answer.ts'
import { CanStillBe } from './CanStillBe.tsx'
import { CarsLikeIt } from './CarsLikeIt.tsx'
import { ClaimsTested, Contradictions } from './ClaimsTested.tsx'
import { NumbersRead } from './NumbersRead.tsx'
import { QuestionField } from './QuestionField.tsx'
import { SheetOffer } from './SheetOffer.tsx'
import { TellList } from './TellList.tsx'
import './inference.css'

/** What the tells of the record's sheets say: where to look next, what the car can still be, claims put to the test. */
export function Inference({ record }: { readonly record: RecordView }) {
  const [chosen, setChosen] = useState<string | null>(null)
  const [trying, setTrying] = useState(false)
  const [whatIf, setWhatIf] = useState<readonly Observation[]>([])
  const [question, setQuestion] = useState<SettledQuestion>({ about: 'build' })
  const asked = { whatIf: [...whatIf], chainsOf: chosen === null ? [] : [chosen], question }
  const { value: view, problem, busy } = useAnswer('identity.view', asked, record.journalNumber)
  const { value: more } = useAnswer('identity.more', { whatIf: [...whatIf] }, record.journalNumber)
  const { send, problem: refused } = useChange()
  const say = async (said: Observation) => {
    if (trying) setWhatIf((before) => [...before.filter(({ tell }) => tell !== said.tell), said])
    else await change('observation.set', { observation: said })
  }
  const takeBack = (tell: string) => {
    if (whatIf.some((row) => row.tell === tell)) setWhatIf((before) => before.filter((row) => row.tell !== tell))
    else void send('observation.withdraw', { tell })
  }
  if (view === null && problem === null && record.sheets.length > 0)
    return <p className="note">What the car can still be is being computed.</p>
  if (view === null || view.sheets.length === 0) {
    return (
      <>
        <ProblemNote problem={problem} />
        <SheetOffer mayChange={!record.readOnly} follows={record.journalNumber} />
      </>
    )
  }
  return (
    <>
      <ProblemNote problem={problem ?? refused} />
      {view.problem === null ? null : <p className="note">{view.problem}</p>}
      <label className="what-if">
        <input
          type="checkbox"
          checked={trying}
          onChange={(event) => {
            setTrying(event.target.checked)
            setWhatIf([])
          }}
        />
        What if: answers are tried and not kept{whatIf.length === 0 ? '' : `; ${whatIf.length} tried`}
      </label>
      <div className="inference" aria-busy={busy}>
        <div>
          {view.problem === null ? <QuestionField view={view} question={question} onChange={setQuestion} /> : null}
          <TellList
            view={view}
            mayChange={!record.readOnly || trying}
            trying={trying}
            onSay={say}
            onTakeBack={takeBack}
          />
        </div>
        <div>
          <CanStillBe view={view} chosen={chosen} onChoose={setChosen} />
          <Contradictions view={view} />
          <NumbersRead numbers={view.numbers} />
          <ClaimsTested record={record} view={view} more={more} />
          <CarsLikeIt more={more} />
          <SheetOffer mayChange={!record.readOnly} follows={record.journalNumber} />
        </div>
      </div>
    </>
  )
}
