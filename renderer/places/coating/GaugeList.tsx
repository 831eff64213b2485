import { coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { Gauge } from '../../../shared-types/reading.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { ShownUnits } from '../../../shared-types/units.ts'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { figureText } from '../../parts-of-page/figure-text.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useChange } from '../../store/use-answer.ts'
import { dayText, timeText } from '../identity/day-text.ts'
import { differenceOf } from './gauge-difference.ts'

interface GaugeListProps {
  readonly record: RecordView
  readonly onGauge: (key: string | null) => void
  readonly onCheck: (gauge: string) => void
}

function declaredWords(gauge: Gauge, units: ShownUnits): string {
  if (gauge.errorUm === null && gauge.errorPercent === null) return 'error not declared'
  const { notedThickness } = coatingMeasures(units)
  const constant = `${notedThickness.figure(gauge.errorUm ?? 0)}\u202f${notedThickness.unit}`
  return `declared error ${constant} + ${figureText(gauge.errorPercent ?? 0, 1)}\u202f% of the reading`
}

function CheckLines({ record, gauge }: { readonly record: RecordView; readonly gauge: Gauge }) {
  const { checkedThickness } = coatingMeasures(record.commission)
  const withUnit = (um: number) => `${checkedThickness.figure(um)}\u202f${checkedThickness.unit}`
  const withdrawal = useChange()
  const checks = record.gaugeChecks.filter((check) => check.gauge === gauge.number)
  const missing = (['before', 'after'] as const).filter((when) => !checks.some((check) => check.when === when))
  return (
    <>
      <ul>
        {checks.map((check) => {
          const { differenceUm, declaredUm, word } = differenceOf(check, gauge)
          return (
            <li key={check.number} className="check-line">
              <span className="figures">{`H\u202f${check.number}`}</span>
              <span>
                {check.when}, shim {withUnit(check.shimUm)}: {differenceUm < 0 ? '' : '+'}
                {withUnit(differenceUm)}
                <span className="under-line">
                  <span className={word === 'outside the declared error' ? 'strong' : ''}>{word}</span>
                  {declaredUm === null ? '' : ` of ${withUnit(declaredUm)}`} · {timeText(check.at)}
                </span>
              </span>
              <ActionKey
                keys=""
                label="withdraw"
                name={`Withdraw check H ${check.number}`}
                disabled={record.readOnly}
                onAct={() => void withdrawal.send('gaugeCheck.withdraw', { number: check.number })}
              />
            </li>
          )
        })}
      </ul>
      {missing.length === 0 ? null : <p className="note">Not checked {missing.join(', nor ')} the readings.</p>}
      <ProblemNote problem={withdrawal.problem} />
    </>
  )
}

/** Gauges with what their makers declare, and each check against a shim or bare metal. */
export function GaugeList({ record, onGauge, onCheck }: GaugeListProps) {
  return (
    <Section
      head="Gauges and their checks"
      level="column"
      action={
        <ActionKey keys="G" label="add" name="Add a gauge" onAct={() => onGauge(null)} disabled={record.readOnly} />
      }
    >
      {record.gauges.length === 0 ? (
        <p className="place-note">
          No gauge yet. G adds one; its declared error stands in its papers, as {'a\u00a0+\u00a0b\u00a0·\u00a0t'}.
        </p>
      ) : null}
      {record.gauges.map((gauge) => (
        <div key={gauge.number} className="gauge">
          <button
            type="button"
            className="line-button"
            onClick={() => onGauge(String(gauge.number))}
            disabled={record.readOnly}
          >
            <span className="figures">{`G\u202f${gauge.number}`}</span>
            <span>
              <span className="strong">{gauge.name}</span> {gauge.serial}
              <span className="under-line">
                {gauge.principle} · {declaredWords(gauge, record.commission)} · certified {dayText(gauge.certifiedOn)}
              </span>
            </span>
          </button>
          <CheckLines record={record} gauge={gauge} />
          <ActionKey
            keys={gauge === record.gauges.at(-1) ? 'H' : ''}
            label="check against a shim"
            name={`Check gauge G ${gauge.number}`}
            disabled={record.readOnly}
            onAct={() => onCheck(String(gauge.number))}
          />
        </div>
      ))}
    </Section>
  )
}
