import type { Measurement } from '../../../../shared-types/exhibit.ts'
import type { TellMeasured } from '../../../../shared-types/measuring-view.ts'
import { ActionKey } from '../../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { useRecordStore } from '../../../store/record-store.ts'
import { useShownUnits } from '../../../store/shown-units.ts'
import { useAnswer, useChange } from '../../../store/use-answer.ts'
import { figuresIn, tellWords } from './result-words.ts'

/** Tells shown; the others are counted only. */
const MOST_SHOWN = 5

interface TellsDecidedProps {
  readonly measured: Pick<Measurement, 'value' | 'unit'> & { readonly uncertainty: number }
  /** Exhibit that holds just this measurement; null while it is not kept as it stands. */
  readonly exhibit: number | null
}

function TellLine({ tell, measured, exhibit }: TellsDecidedProps & { readonly tell: TellMeasured }) {
  const observations = useRecordStore((state) => state.record?.observations)
  const readOnly = useRecordStore((state) => state.record?.readOnly ?? true)
  const handing = useChange()
  const standardUncertainty = measured.uncertainty / 2
  const { figure } = figuresIn(measured.unit, useShownUnits())
  const { noted } = tell
  const same =
    noted?.value === measured.value &&
    noted.standardUncertainty === standardUncertainty &&
    (exhibit === null || noted.from === exhibit)
  const handOver = () => {
    const before = observations?.find((row) => row.tell === tell.key)
    const exhibits = [...new Set([...(before?.exhibits ?? []), ...(exhibit === null ? [] : [exhibit])])]
    const value = { value: measured.value, standardUncertainty, ...(exhibit === null ? {} : { from: exhibit }) }
    void handing.send('observation.set', {
      observation: {
        tell: tell.key,
        state: 'measured',
        value: null,
        surePercent: null,
        measured: value,
        exhibits,
        note: before?.note ?? '',
      },
    })
  }
  return (
    <li className="picture-tell">
      <strong>{tell.name}</strong>
      <span>{tellWords(tell, standardUncertainty, figure)}</span>
      <span className="under-line">
        {noted === null
          ? 'nothing measured is noted of it'
          : `noted: ${figure(noted.value, noted.standardUncertainty)}, u = ${figure(noted.standardUncertainty, noted.standardUncertainty)}`}
      </span>
      {same ? (
        <span className="under-line">this value is noted of it, and follows when this is picked again</span>
      ) : exhibit === null ? (
        <span className="under-line">keep the measurement first; then its value can be noted here</span>
      ) : (
        <ActionKey
          keys=""
          label="note this value of it"
          name={`Note this value of the tell ${tell.name}`}
          onAct={handOver}
          disabled={readOnly || handing.busy}
        />
      )}
      <ProblemNote problem={handing.problem} />
    </li>
  )
}

/** Tells of the reference sheets that this measurement could decide, the nearest first. */
export function TellsDecided(props: TellsDecidedProps) {
  const journalNumber = useRecordStore((state) => state.record?.journalNumber ?? 0)
  const { value, unit, uncertainty } = props.measured
  const { value: tells, problem } = useAnswer(
    'measuring.tells',
    { value, unit, standardUncertainty: uncertainty / 2 },
    journalNumber,
  )
  // Where it fits none, the nearest one says so; the rest is not about what was measured.
  const fitting = tells?.filter(({ exactness }) => exactness.decision !== 'fits none') ?? []
  const shown = (fitting.length > 0 ? fitting : (tells ?? []).slice(0, 1)).slice(0, MOST_SHOWN)
  const further = (tells?.length ?? 0) - shown.length
  return (
    <Section head="What it decides" beside="at 100 times the likelihood of the next value (ENFSI 2015)">
      <ProblemNote problem={problem} />
      {tells === null && problem === null ? <p className="place-note">It is being worked out.</p> : null}
      {tells !== null && tells.length === 0 ? (
        <p className="place-note">No reference sheet of this record has a tell measured in this unit.</p>
      ) : null}
      <ul>
        {shown.map((tell) => (
          <TellLine key={tell.key} tell={tell} {...props} />
        ))}
      </ul>
      {further > 0 ? (
        <p className="place-note">{`${further} more in this unit, too far from this value or further off.`}</p>
      ) : null}
    </Section>
  )
}
