import {
  type ColumnMapping,
  columnMapping,
  columnRole,
  type PastedColumns,
} from '../../../shared-types/coating-import.ts'
import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import { coatingUnit } from '../../../shared-types/units.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { useRecordStore } from '../../store/record-store.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { lineFrom } from './reading-entry.ts'

interface ColumnsPreviewProps {
  readonly panelId: string
  readonly text: string
  readonly mapping: ColumnMapping | null
  readonly onMapping: (mapping: ColumnMapping) => void
}

const numbered = (columns: ColumnMapping['columns']) => columns.map((role, at) => ({ role, at }))
const firstLine = { heads: 'names the columns', values: 'holds values' } as const

function Refusals({ columns }: { readonly columns: PastedColumns }) {
  if (columns.refused.length === 0) return null
  return (
    <>
      <p className="strong">{`Lines refused: ${columns.refused.length + columns.moreRefused}`}</p>
      <ul className="refused-lines">
        {columns.refused.map(({ line, why }) => (
          <li key={line}>{`line ${line}: ${why}`}</li>
        ))}
        {columns.moreRefused === 0 ? null : <li>{`and ${columns.moreRefused} more`}</li>}
      </ul>
    </>
  )
}

function FirstSpots({ columns }: { readonly columns: PastedColumns }) {
  const { unit } = columns.mapping
  const commission = useRecordStore((state) => state.record?.commission)
  if (columns.preview.length === 0 || commission === undefined) return null
  const { length } = coatingMeasures(commission)
  return (
    <table className="columns-preview">
      <caption>{`First spots as they would go in, ${unit}`}</caption>
      <thead>
        <tr>
          <th scope="col">line</th>
          <th scope="col">values</th>
          <th scope="col">place on the plan</th>
        </tr>
      </thead>
      <tbody>
        {columns.preview.slice(0, 6).map(({ line, values, at, where }) => (
          <tr key={line}>
            <td>{line}</td>
            <td>{lineFrom(values, unit)}</td>
            <td>{at === null ? where || 'none' : `${length.figure(at.u)}, ${length.text(at.v)} ${where}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Which column is what, unit and signs, to be changed; the first spots as they would go in; every refused line with its reason. */
export function ColumnsPreview({ panelId, text, mapping, onMapping }: ColumnsPreviewProps) {
  const { value: columns, problem } = useAnswer('coating.columns', { panelId, text, mapping })
  if (columns === null) return <ProblemNote problem={problem} />
  const taken = mapping ?? columns.mapping
  const set = (part: Partial<ColumnMapping>) => onMapping({ ...taken, ...part })
  const example = (at: number) => columns.firstLines.map((cells) => cells[at] ?? '').join(', ')
  return (
    <>
      <ProblemNote problem={problem} />
      <p role="status">
        {columns.problem ??
          `${columns.spots} ${columns.spots === 1 ? 'spot' : 'spots'} from ${columns.lines} lines would go in.`}
      </p>
      {columns.notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      <Refusals columns={columns} />
      <FirstSpots columns={columns} />
      {numbered(taken.columns).map(({ role, at }) => (
        <ChoiceField
          key={at}
          label={`Column ${at + 1}${taken.headed ? `: ${columns.heads[at] ?? ''}` : ''}`}
          hint={example(at).slice(0, 60)}
          choices={columnRole.options}
          value={role}
          onChange={(chosen) => set({ columns: taken.columns.map((own, place) => (place === at ? chosen : own)) })}
        />
      ))}
      <ChoiceField
        label="First line"
        choices={['heads', 'values'] as const}
        wordsFor={(choice) => firstLine[choice]}
        value={taken.headed ? 'heads' : 'values'}
        onChange={(choice) => set({ headed: choice === 'heads' })}
      />
      <ChoiceField
        label="Readings in"
        choices={coatingUnit.options}
        value={taken.unit}
        onChange={(unit) => set({ unit })}
      />
      <ChoiceField
        label="Decimal sign"
        choices={columnMapping.shape.decimal.options}
        value={taken.decimal}
        onChange={(decimal) => set({ decimal })}
      />
      <ChoiceField
        label="Between columns"
        choices={columnMapping.shape.separator.options}
        value={taken.separator}
        onChange={(separator) => set({ separator })}
      />
      <ChoiceField
        label="Places in"
        choices={columnMapping.shape.placeUnit.options}
        hint="across and down from the left and upper edge of the panel as drawn"
        value={taken.placeUnit}
        onChange={(placeUnit) => set({ placeUnit })}
      />
    </>
  )
}
