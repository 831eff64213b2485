import type { Particulars } from '../../../shared-types/car.ts'
import { featuresText } from '../../../shared-types/car-features.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import { bodyWords } from './body-words.ts'
import type { CarRows } from './car-rows.ts'
import { dayText } from './day-text.ts'
import { dimensionsText } from './own-dimensions.ts'
import { SaidLines } from './SaidLines.tsx'

/** The build interval in words: both ends, one end, or that it is not known. */
export function builtText(particulars: Pick<Particulars, 'builtFrom' | 'builtTo'>): string {
  const { builtFrom, builtTo } = particulars
  if (builtFrom === null && builtTo === null) return 'not known'
  if (builtFrom === null) return `not after ${dayText(builtTo)}`
  if (builtTo === null) return `not before ${dayText(builtFrom)}`
  return `${dayText(builtFrom)} to ${dayText(builtTo)}`
}

/** What the car is, as far as it is told or known. */
export function ParticularsLines({ record, onAmend }: { readonly record: CarRows; readonly onAmend: () => void }) {
  const { particulars, commission } = record
  const { body } = particulars
  const features = useAnswer('lists.features', { body })
  const choices = useAnswer('lists.dimensions', { body }).value?.dimensions ?? []
  const measures = dimensionsText(choices, particulars.dimensions, commission.names, commission.lengthUnit)
  return (
    <Section
      head="Particulars"
      level="column"
      action={
        <ActionKey keys="P" label="amend" name="Amend the particulars" onAct={onAmend} disabled={record.readOnly} />
      }
    >
      <SaidLines
        lines={[
          ['Maker', particulars.maker],
          ['Line', particulars.line],
          ['Body', bodyWords(particulars.body, commission.names)],
          ['Has', featuresText(features.value ?? [], particulars.conditions, commission.names)],
          ['Measures', measures === '' ? 'nothing given: drawn as its body usually is' : measures],
          ['Steering', `on the ${particulars.steering}`],
          ['Market of first sale', particulars.marketOfFirstSale],
          ['Built', builtText(particulars)],
          ['Grounds of the build interval', particulars.builtGrounds],
          ['Colour now', particulars.colourNow],
          ['Construction and materials', particulars.construction],
          ['History as told', particulars.history],
        ]}
      />
    </Section>
  )
}
