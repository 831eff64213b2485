import type { NumberChecked, NumberFormat } from '../../../shared-types/number-format.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { Section } from '../../parts-of-page/Section.tsx'

const yearsWords = (years: readonly number[]): string =>
  years.length === 0 ? '' : `model year ${years.join(' or ')} by position 10`

const makerWords = ({ makerCode, lowVolumeMaker }: NumberChecked): string =>
  makerCode === null ? '' : `maker’s code ${makerCode}${lowVolumeMaker === true ? ', a maker of few vehicles' : ''}`

function completionWords({ completions, completionCount }: NumberChecked): string {
  if (completionCount === '0') return 'no number of the format fills what could not be read'
  const more = completions.length < Number(completionCount) ? `, the first ${completions.length}` : ''
  return `${completionCount} ${completionCount === '1' ? 'number fills' : 'numbers fill'} what could not be read${more}`
}

function Checked({ number }: { readonly number: NumberChecked }) {
  const says = [yearsWords(number.modelYears), makerWords(number)].filter((words) => words !== '').join('; ')
  return (
    <div className="number-read number-checked">
      <span className="reference-row">
        {number.rows.map((row) => (
          <ReferenceLink key={row} reference={{ kind: 'carNumber', key: String(row) }} />
        ))}
      </span>
      <span>
        <span className="figures strong">{number.text}</span> <span className="quiet">{number.from}</span>
        {says === '' ? null : <span className="under-line">{says}</span>}
        <dl className="said-list">
          {number.checks.map((check) => (
            <div key={check.id}>
              <dt>{check.id}</dt>
              <dd>
                <span className="strong">{check.result}</span>
                <span className="under-line">
                  {check.because} <span className="quiet">{check.source}</span>
                </span>
              </dd>
            </div>
          ))}
        </dl>
        {number.text.includes('?') && number.checks.some(({ result }) => result !== 'does not apply') ? (
          <span className="under-line">
            {completionWords(number)}
            {number.completions.length === 0 ? null : (
              <>
                {': '}
                <span className="figures">{number.completions.join(' ')}</span>
              </>
            )}
          </span>
        ) : null}
      </span>
    </div>
  )
}

/** Numbers of 17 characters against the rule for them: each check with how it came out and why. None says how a number came about. */
export function NumbersChecked({ format }: { readonly format: NumberFormat }) {
  return (
    <Section head="Seventeen characters" beside="characters, check digit, model year, figures">
      <p className="place-note">{format.applies}</p>
      {format.numbers.map((number) => (
        <Checked key={number.text} number={number} />
      ))}
      {format.numbers.length === 0 ? <p className="place-note">No number here has 17 characters.</p> : null}
    </Section>
  )
}
