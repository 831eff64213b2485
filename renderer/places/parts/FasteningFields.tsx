import { type FasteningFound, fasteningParts, witnessMarks } from '../../../shared-types/fastening.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { TextField } from '../../parts-of-page/TextField.tsx'
import { useAnswer } from '../../store/use-answer.ts'

const blank = { head: '', drive: '', thread: '', plating: '', mark: '' }
const nothing: FasteningFound = { expected: blank, expectedBy: '', found: blank, witness: 'not looked at' }

const hints = {
  head: 'hexagon, pan, countersunk, raised countersunk, round, cheese, cap',
  drive: 'hexagon, slot, cross recess, hexagon socket, square',
  thread: 'UNF 1/4, BSF 5/16, M6 × 1',
  plating: 'zinc, cadmium, phosphate, none',
  mark: 'letters and lines on the head',
} as const
const labels = { head: 'Head', drive: 'Drive', thread: 'Thread', plating: 'Plating', mark: 'Mark' } as const

interface FasteningFieldsProps {
  readonly value: FasteningFound | null
  readonly onChange: (value: FasteningFound | null) => void
}

const saysNothing = ({ expected, expectedBy, found, witness }: FasteningFound): boolean =>
  [...Object.values(expected), ...Object.values(found), expectedBy].every((words) => words === '') &&
  witness === 'not looked at'

/** A fastening, part by part: what should be there, by whose word, what is there, and its witness marks; compared as typed. */
export function FasteningFields({ value, onChange }: FasteningFieldsProps) {
  const now = value ?? nothing
  const set = (part: Partial<FasteningFound>) => {
    const next = { ...now, ...part }
    onChange(saysNothing(next) ? null : next)
  }
  const compared = useAnswer('parts.fastening', now).value
  return (
    <Section head="Fastening" beside="found, and expected">
      {fasteningParts.map((part) => (
        <div key={part} className="fastening-pair">
          <TextField
            label={`${labels[part]}, found`}
            hint={hints[part]}
            value={now.found[part]}
            onChange={(words) => set({ found: { ...now.found, [part]: words } })}
          />
          <TextField
            label={`${labels[part]}, expected`}
            value={now.expected[part]}
            onChange={(words) => set({ expected: { ...now.expected, [part]: words } })}
          />
        </div>
      ))}
      <TextField
        label="Expected by"
        hint="a sheet, a like car, the other side of this one"
        value={now.expectedBy}
        onChange={(expectedBy) => set({ expectedBy })}
      />
      <ChoiceField
        label="Witness marks"
        hint="paint, dirt and print that settled across its edge"
        choices={witnessMarks.options}
        value={now.witness}
        onChange={(witness) => set({ witness })}
      />
      <p className="place-note" role="status">
        {value === null || compared === null ? '' : compared.words}
      </p>
    </Section>
  )
}
