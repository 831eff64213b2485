import type { SetAside } from '../../../shared-types/identity-asking.ts'
import type { NumberReadView } from '../../../shared-types/identity-view.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePartNames } from '../../store/part-names.ts'

const weighed = ({ counts, standsFor }: NumberReadView): string => {
  if (!counts) return 'Too unlike the form to be weighed.'
  if (standsFor.length === 0) return 'Weighed with what was seen.'
  return `Weighed with what was seen; not counted beside it: ${standsFor.join(', ')}.`
}

/** Numbers on the car as the sheets read them, place by place: what they say of the car, or where they part from the form. */
export function NumbersRead(props: {
  readonly numbers: readonly NumberReadView[]
  /** Sets one aside while answers are tried; null otherwise. */
  readonly onSetAside: ((readAt: Pick<SetAside, 'numbers' | 'parts'>) => void) | null
}) {
  const { numbers, onSetAside } = props
  const nameOfPart = usePartNames()
  if (numbers.length === 0) return null
  return (
    <Section
      head="Numbers as the sheet reads them"
      level="column"
      beside="every place of a number counts with the others"
    >
      {numbers.map((number) => (
        <div key={`${number.rows.join()} ${number.parts.join()}`} className="number-read">
          <span className="reference-row">
            {number.rows.map((row) => (
              <ReferenceLink key={row} reference={{ kind: 'carNumber', key: String(row) }} />
            ))}
            {number.parts.map((part) => (
              <ReferenceLink key={part} reference={{ kind: 'part', key: part }} words={nameOfPart(part)} />
            ))}
          </span>
          <span>
            {number.name} <span className="figures strong">{number.asRead}</span>
            {number.why === null ? (
              number.says.map((words) => (
                <span key={words} className="under-line">
                  {words}
                </span>
              ))
            ) : (
              <span className="under-line">
                {number.why}{' '}
                {number.wouldFit.length === 0 ? '' : `It would have the form with ${number.wouldFit.join('')}.`}
              </span>
            )}
            <span className="under-line quiet">
              {weighed(number)} {number.source}
            </span>
            {onSetAside === null ? null : (
              <button
                type="button"
                className="action-key"
                onClick={() => onSetAside({ numbers: [...number.rows], parts: [...number.parts] })}
              >
                set aside
              </button>
            )}
          </span>
        </div>
      ))}
    </Section>
  )
}
