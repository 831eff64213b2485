import type { Finding } from '../../../shared-types/finding.ts'
import type { LengthUnit } from '../../../shared-types/units.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { heldTogether } from '../../parts-of-page/held-together.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { gradeText } from './finding-draft.ts'
import { extentText, findingTitle, sizeText } from './finding-texts.ts'
import { enter, useWalkStore } from './walk-store.ts'

function FindingFacts({ finding, unit }: { readonly finding: Finding; readonly unit: LengthUnit }) {
  const learned = finding.learnedFrom === '' ? finding.learned : `${finding.learned}: ${finding.learnedFrom}`
  const size = sizeText(finding, unit)
  const facts: readonly (readonly [string, string])[] = [
    ['Extent', extentText(finding, unit)],
    ...(size === '' ? [] : [['Size', size] as const]),
    ['Severity', finding.severity],
    ['Urgency', finding.urgency],
    ['Action', finding.action],
    ['Learned', `${learned}; ${finding.layer}`],
    ...(finding.grade === null ? [] : [['Grade', gradeText(finding.grade)] as const]),
    ...(finding.suspectedCause === '' ? [] : [['Cause, suspected', finding.suspectedCause] as const]),
    ...(finding.note === '' ? [] : [['Note', finding.note] as const]),
  ]
  return (
    <dl className="facts">
      {facts.map(([word, value]) => (
        <div key={word}>
          <dt>{word}</dt>
          <dd>{heldTogether(value)}</dd>
        </div>
      ))}
      {finding.exhibits.length === 0 ? null : (
        <div>
          <dt>Shown by</dt>
          <dd className="reference-row">
            {finding.exhibits.map((number) => (
              <ReferenceLink key={number} reference={{ kind: 'exhibit', key: String(number) }} />
            ))}
          </dd>
        </div>
      )}
    </dl>
  )
}

interface FindingRowsProps {
  readonly findings: readonly Finding[]
  readonly unit: LengthUnit
}

/** Findings of the panel in hand, one unfolded at a time, so that a tenth still fits the sheet. */
export function FindingRows({ findings, unit }: FindingRowsProps) {
  const unfolded = useWalkStore((state) => state.unfolded)
  const open = findings.find((finding) => `F${finding.number}` === unfolded) ?? findings.at(-1)
  if (findings.length === 0) return <p className="note none-yet">none noted</p>
  return (
    <ul className="finding-rows">
      {findings.map((finding) => {
        const isOpen = finding === open
        return (
          <li key={finding.number} className={isOpen ? 'finding-row is-open' : 'finding-row'}>
            <button
              type="button"
              className="finding-head"
              aria-expanded={isOpen}
              onClick={() => useWalkStore.setState({ unfolded: `F${finding.number}` })}
            >
              <span className="figures">{`F\u202f${finding.number}`}</span>
              <span className="finding-words">
                {finding.dangerous ? <em className="dangerous">tell the owner at once. </em> : null}
                {heldTogether(findingTitle(finding))}
              </span>
              {isOpen ? null : <span className="quiet">{finding.severity}</span>}
            </button>
            {isOpen ? (
              <>
                <FindingFacts finding={finding} unit={unit} />
                <ActionKey
                  keys="A"
                  label="amend"
                  name={`Amend finding F ${finding.number}`}
                  onAct={() => enter({ kind: 'finding', amends: finding.number })}
                />
              </>
            ) : null}
          </li>
        )
      })}
    </ul>
  )
}
