import { capital } from '../../../shared-types/capital.ts'
import type { RegisterName } from '../../../shared-types/record.ts'
import { metricUnits } from '../../../shared-types/units.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { differencesOf, rowName } from './plain-words.ts'

interface DifferenceTableProps {
  readonly register: RegisterName
  readonly rowKey: string
  readonly before: unknown
  readonly after: unknown
}

const verbOf = (before: unknown, after: unknown): string =>
  before === null ? 'added' : after === null ? 'taken out' : 'amended'

/** What one row was and what it is, field by field, in words. */
export function DifferenceTable({ register, rowKey, before, after }: DifferenceTableProps) {
  const name = rowName(register, rowKey)
  const shownIn = useRecordStore((state) => state.record?.commission ?? metricUnits)
  return (
    <table className="differences">
      <caption>
        {capital(name)} {verbOf(before, after)}
      </caption>
      <thead>
        <tr>
          <th scope="col">what</th>
          <th scope="col">before</th>
          <th scope="col">after</th>
        </tr>
      </thead>
      <tbody>
        {differencesOf(before, after, shownIn).map((difference) => (
          <tr key={difference.field}>
            <th scope="row">{difference.field}</th>
            <td>{difference.before}</td>
            <td>{difference.after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
