import { useCallback, useRef, useState } from 'react'
import type { Judgement as JudgementView } from '../../../shared-types/judgement.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { BOUNDS_MEANING } from '../../parts-of-page/number-forms.ts'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { AreaLines } from './AreaLines.tsx'
import { BarAxis } from './BarAxis.tsx'
import { CoverageLines } from './CoverageLines.tsx'
import { OpenQuestions } from './OpenQuestions.tsx'
import { ShareLine } from './ShareLine.tsx'
import { WeightForm } from './WeightForm.tsx'
import { WeightList } from './WeightList.tsx'
import { WouldNarrowList } from './WouldNarrowList.tsx'
import '../place-lines.css'
import './judgement.css'

/** Moves the focus from line to line of the bars. */
function useLineKeys(): React.RefObject<HTMLDivElement | null> {
  const lines = useRef<HTMLDivElement>(null)
  const step = (by: number) => {
    const all = [...(lines.current?.querySelectorAll<HTMLButtonElement>('.share-line') ?? [])]
    const now = all.indexOf(document.activeElement as HTMLButtonElement)
    all[now < 0 ? 0 : Math.min(all.length - 1, Math.max(0, now + by))]?.focus()
  }
  useKeys('Judgement', [
    { keys: 'ArrowDown', does: 'next line', run: () => step(1) },
    { keys: 'ArrowUp', does: 'line before', run: () => step(-1) },
  ])
  return lines
}

interface JudgementColumnsProps {
  readonly judgement: JudgementView
  readonly readOnly: boolean
  readonly onWeight: (weighs: string | null) => void
}

function JudgementColumns({ judgement, readOnly, onWeight }: JudgementColumnsProps) {
  const lines = useLineKeys()
  const weighed = judgement.unweighed !== null
  return (
    <div className="judgement-columns" ref={lines}>
      <div>
        {judgement.coverage.every((layer) => layer.seen === 0) ? (
          <p className="place-note">
            Nothing has been looked at yet, so nothing can be said: every bar is open from end to end. Begin in the
            Walk-round (Alt 3).
          </p>
        ) : null}
        <Section head="What of the body is original" level="column" beside={BOUNDS_MEANING}>
          <BarAxis />
          <AreaLines area={judgement.whole} weighed={weighed} whole />
        </Section>
        <Section head="By area of the body">
          {judgement.areas.map((area) => (
            <AreaLines key={area.id} area={area} weighed={weighed} />
          ))}
        </Section>
        <Section head="By panel" beside="in walking order">
          {judgement.panels.map((panel) => (
            <AreaLines key={panel.id} area={panel} weighed={weighed} />
          ))}
        </Section>
      </div>
      <div>
        <CoverageLines coverage={judgement.coverage} />
        <WouldNarrowList things={judgement.wouldNarrow} />
        <WeightList judgement={judgement} readOnly={readOnly} onWeight={onWeight} />
        <Section head="Parts, by group" level="column" beside={weighed ? 'by count and the weights set' : 'by count'}>
          <BarAxis />
          {judgement.parts.length === 0 ? <p className="place-note">No part is on the list.</p> : null}
          {judgement.parts.map((range) => (
            <ShareLine key={range.id} range={range} label={range.label} />
          ))}
        </Section>
        <OpenQuestions questions={judgement.openQuestions} />
      </div>
    </div>
  )
}

function JudgementPage({ record }: { readonly record: RecordView }) {
  const judgement = useAnswer('judgement.view', {}, record.journalNumber)
  const [weighs, setWeighs] = useState<string | null | undefined>(undefined)
  const { readOnly } = record
  const onWeight = useCallback(
    (key: string | null) => {
      if (!readOnly) setWeighs(key)
    },
    [readOnly],
  )
  useKeys('Weights', [{ keys: 'W', does: 'set a weight', run: () => onWeight(null) }])
  return (
    <PlacePage
      name="Judgement"
      sheetName="Entry"
      {...(weighs === undefined
        ? {}
        : {
            sheet: (
              <WeightForm
                key={weighs ?? ''}
                row={record.weights.find((weight) => weight.weighs === weighs) ?? null}
                follows={record.journalNumber}
                onLeave={() => setWeighs(undefined)}
              />
            ),
          })}
    >
      <ProblemNote problem={judgement.problem} />
      {judgement.value === null ? (
        <p className="place-note" role="status">
          {judgement.busy ? 'reckoning from the record' : ''}
        </p>
      ) : (
        <JudgementColumns judgement={judgement.value} readOnly={readOnly} onWeight={onWeight} />
      )}
    </PlacePage>
  )
}

/** Judgement: what can be said of originality, as bounds, and why; never one total of unlike things. */
export function Judgement() {
  return <RecordPlace name="Judgement">{(record) => <JudgementPage record={record} />}</RecordPlace>
}
