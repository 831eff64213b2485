import { coatingMeasures } from '../../../../shared-types/coating-measures.ts'
import type { PickedGeometry } from '../../../../shared-types/exhibit.ts'
import { measuredForm } from '../../../parts-of-page/number-forms.ts'
import { ProblemNote } from '../../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../../parts-of-page/Section.tsx'
import { useShownUnits } from '../../../store/shown-units.ts'
import { useAnswer } from '../../../store/use-answer.ts'
import { agreementWords, figuresIn, partsWords } from './result-words.ts'
import { TellsDecided } from './TellsDecided.tsx'
import { useSettled } from './use-settled.ts'

const RESTS_MS = 120

function Said({ head, children }: { readonly head: string; readonly children: string }) {
  return (
    <div>
      <dt>{head}</dt>
      <dd>{children}</dd>
    </div>
  )
}

interface PictureResultProps {
  readonly picked: PickedGeometry
  /** Exhibit that holds just these picks; null while they are not kept. */
  readonly exhibit: number | null
}

/** What was picked, measured: the value with its uncertainty and what that is made of, and the tells it decides. */
export function PictureResult({ picked, exhibit }: PictureResultProps) {
  const units = useShownUnits()
  const text = useSettled(JSON.stringify(picked), RESTS_MS)
  const {
    value: answer,
    problem,
    busy,
  } = useAnswer('measuring.picture', { picked: JSON.parse(text) as PickedGeometry })
  if (problem !== null) return <ProblemNote problem={problem} />
  if (answer === null) return <p className="place-note">It is being measured.</p>
  const { measured, kept } = answer
  const uncertainty = kept.uncertainty ?? 0
  const { offPlaneError } = measured
  const { figure, alone } = figuresIn(measured.unit, units)
  const off = coatingMeasures(units).smallLength.text(picked.offPlane?.offsetMm ?? 0)
  return (
    <div className="picture-results" aria-busy={busy}>
      <Section head="Measured">
        <p className="picture-value figures" role="status">
          {measuredForm(alone(kept.value, uncertainty), figure(uncertainty, uncertainty))}
        </p>
        <dl className="said-list">
          <Said head="Made of">{partsWords(measured, picked.distortionPx !== null, figure)}</Said>
          <Said head="Two ways">{agreementWords(measured, figure)}</Said>
          {offPlaneError === null ? null : (
            <Said head="Off the plane">
              {`Nearer the camera by ${off}, it reads ${figure(offPlaneError, uncertainty)} too large; this is not in the uncertainty.`}
            </Said>
          )}
          {measured.notes.map((note, at) => (
            <Said key={note} head={at === 0 ? 'Holds if' : ''}>
              {note}
            </Said>
          ))}
        </dl>
      </Section>
      <TellsDecided measured={{ value: kept.value, unit: kept.unit, uncertainty }} exhibit={exhibit} />
    </div>
  )
}
