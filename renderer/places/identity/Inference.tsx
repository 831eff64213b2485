import { memo, useCallback, useState } from 'react'
import type { SettledQuestion } from '../../../shared-types/identity-asking.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { change } from '../../store/ask.ts'
import { useChange } from '../../store/use-answer.ts'
import { useKept } from '../../store/use-kept.ts'
import { CanStillBe } from './CanStillBe.tsx'
import { CarsLikeIt } from './CarsLikeIt.tsx'
import { ClaimsTested, Contradictions } from './ClaimsTested.tsx'
import { EffortFirst } from './EffortFirst.tsx'
import { NumbersRead } from './NumbersRead.tsx'
import { QuestionField } from './QuestionField.tsx'
import { SheetOffer } from './SheetOffer.tsx'
import { TellList } from './TellList.tsx'
import { useIdentity } from './use-identity.ts'
import { useMore } from './use-more.ts'
import { useWhatIf } from './use-what-if.ts'
import { SetAsideList, WhatIfBox } from './WhatIf.tsx'
import './inference.css'

/** Parts that need not be drawn again with every answer. */
const [Sheets, Rarity, Numbers] = [memo(SheetOffer), memo(CarsLikeIt), memo(NumbersRead)]

/** What the tells of the record's sheets say: where to look next, what the car can still be, claims put to the test. */
export function Inference({ record }: { readonly record: RecordView }) {
  const [chosen, setChosen] = useState<string | null>(null)
  const [claimChains, setClaimChains] = useState<readonly number[]>([])
  const [byEffort, setByEffort] = useState(false)
  const whatIf = useWhatIf()
  const { trying, tried, setAside } = whatIf
  const [question, setQuestion] = useState<SettledQuestion>({ about: 'build' })
  const noted = { whatIf: [...tried], setAside }
  const asked = { ...noted, chainsOf: chosen === null ? [] : [chosen], claimChains: [...claimChains], question }
  const { view, answered, problem, busy } = useIdentity(asked, record)
  const variables = useKept(view?.variables.map(({ key, name }) => ({ key, name })) ?? [])
  const claims = useKept(view?.claims.map(({ claim }) => claim) ?? [])
  const { more, waits } = useMore(answered)
  const { send, problem: refused } = useChange()
  const { say: tryOut, withdraw } = whatIf
  const say = useCallback(
    async (said: Observation) => {
      if (trying) tryOut(said)
      else await change('observation.set', { observation: said })
    },
    [trying, tryOut],
  )
  const takeBack = useCallback(
    (tell: string) => {
      if (trying) withdraw(tell)
      else void send('observation.withdraw', { tell })
    },
    [trying, withdraw, send],
  )
  const turnChain = useCallback(
    (claim: number, open: boolean) =>
      setClaimChains((before) => [...before.filter((other) => other !== claim), ...(open ? [claim] : [])]),
    [],
  )
  const mayChange = !record.readOnly
  const offer = <Sheets mayChange={mayChange} follows={record.sheets} />
  if (view === null && problem === null && record.sheets.length > 0)
    return <p className="note">What the car can still be is being computed.</p>
  if (view === null || view.sheets.length === 0) {
    return (
      <>
        <ProblemNote problem={problem} />
        {offer}
      </>
    )
  }
  return (
    <>
      <ProblemNote problem={problem ?? refused} />
      {view.problem === null ? null : <p className="note">{view.problem}</p>}
      <div className="inference-asked">
        {view.problem === null ? (
          <QuestionField variables={variables} claims={claims} question={question} onChange={setQuestion} />
        ) : null}
        <EffortFirst byEffort={byEffort} onTurn={setByEffort} />
        <WhatIfBox whatIf={whatIf} />
      </div>
      <SetAsideList whatIf={whatIf} nameOfTell={(tell) => view.tells.find(({ key }) => key === tell)?.name ?? tell} />
      <div className="inference" aria-busy={busy}>
        <div>
          <TellList
            tells={view.tells}
            variables={variables}
            question={view.question}
            byEffort={byEffort}
            mayChange={mayChange || trying}
            trying={trying}
            takeBackWord={trying ? 'set aside' : 'withdraw'}
            onSay={say}
            onTakeBack={takeBack}
          />
        </div>
        <div>
          <CanStillBe view={view} chosen={chosen} onChoose={setChosen} />
          <Contradictions conflicts={view.conflicts} repairs={view.repairs} />
          <Numbers numbers={view.numbers} onSetAside={trying ? whatIf.setNumberAside : null} />
          <ClaimsTested
            claims={record.claims}
            tested={view.claims}
            scale={view.scale}
            more={more}
            waits={waits}
            onChain={turnChain}
          />
          <Rarity more={more} waits={waits} />
          {offer}
        </div>
      </div>
    </>
  )
}
