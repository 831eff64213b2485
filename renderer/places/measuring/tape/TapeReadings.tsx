import type { TapeKind } from '../../../../shared-types/tape-question.ts'
import type { ShownUnits } from '../../../../shared-types/units.ts'
import { ChoiceField } from '../../../parts-of-page/ChoiceField.tsx'
import { NoteField, TextField } from '../../../parts-of-page/TextField.tsx'
import type { Entry } from '../../../parts-of-page/useEntry.ts'
import { YesNoField } from '../../../parts-of-page/YesNoField.tsx'
import { JointField } from './JointField.tsx'
import { stepFields, type TapeEntry, type TapeFieldName, YES } from './tape-entry.ts'

interface ReadingsProps {
  readonly entry: Entry<TapeEntry>
  /** Units lengths and coatings are typed in. */
  readonly units: ShownUnits
}

const ROW = 'one after the other: 71.8 71.9 72.0'

function Lengths(props: {
  readonly of: ReadingsProps
  readonly name: TapeFieldName
  readonly label: string
  readonly hint?: string
  readonly autoFocus?: boolean
}) {
  const { of, name, label, hint, autoFocus = false } = props
  return (
    <TextField
      label={`${label}, ${of.units.lengthUnit}`}
      figures
      autoFocus={autoFocus}
      {...(hint === undefined ? {} : { hint })}
      {...of.entry.field(name)}
    />
  )
}

function Plain({ of, name, label, hint }: { of: ReadingsProps; name: TapeFieldName; label: string; hint?: string }) {
  return <TextField label={label} figures {...(hint === undefined ? {} : { hint })} {...of.entry.field(name)} />
}

const stepLabels = ['Spacings of neighbours', 'Spacings, every second stud', 'Spacings, every third stud']

function StudReadings(props: ReadingsProps) {
  const { entry } = props
  const { studs } = entry.draft
  return (
    <>
      {stepFields(studs).map((name, at) => (
        <Lengths
          key={name}
          of={props}
          name={name}
          autoFocus={at === 0}
          label={
            (at + 1) * 2 === Number(studs) ? 'Opposite studs' : (stepLabels[at] ?? `Spacings, studs ${at + 1} apart`)
          }
          {...(at === 0 ? { hint: `centre to centre, or left flank to left flank; ${ROW}` } : {})}
        />
      ))}
      <Plain of={props} name="studs" label="Studs" />
    </>
  )
}

function GapReadings(props: ReadingsProps) {
  const { entry } = props
  return (
    <>
      <JointField entry={entry} />
      <ChoiceField
        label="What is read"
        choices={['gap', 'flush']}
        wordsFor={(of) => (of === 'gap' ? 'width of the gap' : 'flush: how far the first panel stands proud')}
        {...entry.field('of')}
      />
      <Lengths of={props} name="left" label="Left side" hint="three places or more, in order along the joint" />
      <Lengths of={props} name="right" label="Right side" hint="at the same places; left empty where there is none" />
      <Lengths of={props} name="places" label="Places along the joint" hint="left empty: evenly spaced" />
    </>
  )
}

function SheetReadings(props: ReadingsProps) {
  const { value, ...echo } = props.entry.field('echoToEcho')
  return (
    <>
      <TextField label="Travel time, µs" figures autoFocus hint="there and back" {...props.entry.field('travelTime')} />
      <div className="field-row">
        <Plain of={props} name="uTime" label="u of the time, µs" />
        <Lengths of={props} name="nominal" label="Nominal" />
      </div>
      <YesNoField
        label="between two echoes of the back wall"
        value={value === YES}
        onChange={(so) => echo.onChange(so ? YES : '')}
      />
      <div className="field-row">
        <Plain of={props} name="paint" label={`Paint, ${props.units.coatingUnit}`} />
        <Plain of={props} name="uPaint" label={`u of the paint, ${props.units.coatingUnit}`} />
      </div>
      <div className="field-row">
        <Plain of={props} name="velocity" label="Speed in metal, m/s" />
        <Plain of={props} name="uVelocity" label="u of the speed, m/s" />
      </div>
      <p className="note">
        5920 m/s in steel, to about 1 %, is recalled: set it on bare sheet of a known thickness. u: standard
        uncertainty.
      </p>
    </>
  )
}

/** The fields of one kind: what is read, in the order of reading. */
export function TapeReadings({ kind, ...props }: ReadingsProps & { readonly kind: TapeKind }) {
  switch (kind) {
    case 'stud circle':
      return <StudReadings {...props} />
    case 'gaps':
      return <GapReadings {...props} />
    case 'sheet thickness':
      return <SheetReadings {...props} />
    case 'drum or disc':
      return (
        <>
          <Lengths of={props} name="readings" label="Diameter, or thickness of a disc" autoFocus hint={ROW} />
          <NoteField
            label={`Nominal and wear limit, ${props.units.lengthUnit}`}
            rows={2}
            hint="one size to a line, its name before it if it has one: 228.6 230.1"
            {...props.entry.field('sizes')}
          />
        </>
      )
    case 'diagonals':
      return (
        <>
          <div className="field-row">
            <Lengths of={props} name="first" label="One diagonal" autoFocus />
            <Lengths of={props} name="second" label="The other" />
          </div>
          <div className="field-row">
            <Lengths of={props} name="width" label="Width" />
            <Lengths of={props} name="length" label="Length" />
          </div>
          <Lengths of={props} name="limit" label="Greatest difference allowed" hint="left empty: nothing is decided" />
        </>
      )
    case 'trilateration':
      return (
        <NoteField
          label={`Known points and distances, ${props.units.lengthUnit}`}
          rows={4}
          autoFocus
          hint="one to a line: name, x, y, distance, such as A 0 0 512"
          {...props.entry.field('points')}
        />
      )
    case 'weld pitch':
    case 'repeated':
      return (
        <>
          <Lengths
            of={props}
            name="readings"
            label={kind === 'repeated' ? 'Readings' : 'Pitches'}
            autoFocus
            hint={ROW}
          />
          <div className="field-row">
            <Lengths of={props} name="low" label={kind === 'repeated' ? 'Lower limit' : 'Expected from'} />
            <Lengths of={props} name="high" label={kind === 'repeated' ? 'Upper limit' : 'Expected to'} />
          </div>
        </>
      )
  }
}
