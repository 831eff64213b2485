import type { Claim } from '../../../shared-types/claim.ts'
import type { SheetTerms } from '../../../shared-types/sheet-terms.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { RegisterTable } from '../../parts-of-page/RegisterTable.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import type { CarRows } from './car-rows.ts'
import { saysWords } from './claim-words.ts'
import { dayText } from './day-text.ts'
import type { Opened } from './IdentitySheet.tsx'

interface ClaimListProps {
  readonly record: CarRows
  readonly opened: Opened | null
  readonly onOpen: (key: string | null) => void
}

/** Where a claim stands among the others: a first source, or an echo that is no second witness. */
const sourceWords = (claim: Claim): string =>
  claim.repeats === null ? 'first source' : `repeats C ${claim.repeats}: no second witness`

const groundsOf = (claim: Claim): string => {
  if (claim.verdict === 'not settled') {
    return claim.wouldSettle === '' ? 'what would settle it is not stated' : `would settle: ${claim.wouldSettle}`
  }
  return claim.reasons === '' ? 'reasons not stated' : claim.reasons
}

/** What it says in the terms of the sheets, and what it counts. */
function inTerms(claim: Claim, terms: readonly SheetTerms[]): string {
  const says = saysWords(claim.asserts, terms)
  if (says === '') return 'says nothing in the terms of a sheet'
  const counts = claim.reliability === null ? '' : `; ${claim.reliability} of 100 such statements hold`
  return `says ${says}${counts}`
}

/** Claims: whose words, and the examiner's verdict with its strength and reasons. */
export function ClaimList({ record, opened, onOpen }: ClaimListProps) {
  const { value: terms } = useAnswer('sheets.terms', {}, record.sheets)
  return (
    <Section
      head="Claims"
      level="column"
      beside="the verdict is the examiner’s"
      action={
        <ActionKey keys="C" label="add" name="Add a claim" onAct={() => onOpen(null)} disabled={record.readOnly} />
      }
    >
      <RegisterTable
        label="Claims"
        rows={record.claims}
        keyOf={(claim) => String(claim.number)}
        onOpen={(claim) => onOpen(String(claim.number))}
        chosen={opened?.what === 'claim' ? opened.key : null}
        whenEmpty="No claim yet. C adds the first: write the seller’s own words before you look at the car."
        columns={[
          { id: 'number', head: 'no.', cell: (claim) => <span className="figures">{`C\u202f${claim.number}`}</span> },
          {
            id: 'words',
            head: 'whose words',
            names: true,
            cell: (claim) => (
              <>
                <span className="claim-words">“{claim.words}”</span>
                <span className="under-line">
                  {[claim.who === '' ? 'speaker not stated' : claim.who, claim.kind, dayText(claim.on), claim.where]
                    .filter((part) => part !== '')
                    .join(' · ')}
                </span>
                <span className="under-line">{sourceWords(claim)}</span>
                <span className="under-line">{inTerms(claim, terms ?? [])}</span>
              </>
            ),
          },
          {
            id: 'verdict',
            head: 'verdict',
            cell: (claim) => (
              <>
                <span className="strong">{claim.verdict}</span>
                <span className="under-line">strength: {claim.strength}</span>
              </>
            ),
          },
          { id: 'grounds', head: 'grounds', cell: (claim) => <span className="grounds">{groundsOf(claim)}</span> },
        ]}
      />
    </Section>
  )
}
