import type { Measurement } from '../../../shared-types/exhibit.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'

interface TellsFollowingProps {
  /** Exhibit that holds the measurement. */
  readonly number: number
  readonly unit: Measurement['unit']
}

/** Says which tells take their value from a measurement, so that nobody corrects one without knowing what follows. */
export function TellsFollowing({ number, unit }: TellsFollowingProps) {
  const observations = useRecordStore((state) => state.record?.observations)
  // Only the names are wanted: what a value says of each tell stands with the result.
  const tells = useAnswer('measuring.tells', { value: 1, standardUncertainty: 1, unit }).value
  const followers = (observations ?? []).filter(({ measured }) => measured?.from === number)
  if (followers.length === 0) return null
  const names = followers.map(({ tell }) => tells?.find(({ key }) => key === tell)?.name ?? tell)
  return (
    <p className="note">{`${names.join('; ')}: the value of this tell comes from here and follows when this is kept.`}</p>
  )
}
