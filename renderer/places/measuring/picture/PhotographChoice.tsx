import type { Exhibit } from '../../../../shared-types/exhibit.ts'
import { door } from '../../../store/door.ts'

interface PhotographChoiceProps {
  readonly photographs: readonly Exhibit[]
  readonly onChoose: (number: number) => void
}

/** The photographs of the record, to choose the one to measure on. */
export function PhotographChoice({ photographs, onChoose }: PhotographChoiceProps) {
  if (photographs.length === 0)
    return <p className="place-note">No photograph is in this record. Take one in on the walk-round first.</p>
  return (
    <div className="picture-choices">
      {photographs.map(({ number, caption }) => (
        <button type="button" key={number} className="picture-choice" onClick={() => onChoose(number)}>
          <img src={door().address(`exhibit/${number}/thumbnail`)} alt="" loading="lazy" />
          <span className="figures">{`E\u202f${number}`}</span>
          <span className="under-line">{caption}</span>
        </button>
      ))}
    </div>
  )
}
