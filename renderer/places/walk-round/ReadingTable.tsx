import { useState } from 'react'
import { coatingFigure, coatingMeasures } from '../../../shared-types/coating-measures.ts'
import type { Gauge, Spot } from '../../../shared-types/reading.ts'
import { type CoatingUnit, metricUnits } from '../../../shared-types/units.ts'
import { leastForm } from '../../parts-of-page/number-forms.ts'
import { summaryOf, type ThicknessOrMore } from '../coating/spot-summary.ts'
import { FEW_SPOTS, spotLetter } from './panel-spots.ts'
import { enter } from './walk-store.ts'

/** A thickness that may be "more than". */
export function thicknessFigure(value: ThicknessOrMore | null, unit: CoatingUnit): string {
  if (value === null) return '—'
  return `${value.orMore ? '>\u202f' : ''}${coatingFigure(value.um, unit)}`
}

const leastFigure = (value: ThicknessOrMore | null, unit: CoatingUnit): string =>
  value === null ? '—' : leastForm(coatingFigure(value.um, unit), value.orMore)

const MAX_SHOWN = 5

function valuesText(spot: Spot, unit: CoatingUnit): string {
  const words = spot.values.map((value) =>
    value.kind === 'no reading' ? '-' : `${value.kind === 'more than' ? '>' : ''}${coatingFigure(value.um, unit)}`,
  )
  return words.length > MAX_SHOWN ? `${words.slice(0, MAX_SHOWN).join('  ')} …` : words.join('  ')
}

function gaugeText(spot: Spot | undefined, gauges: readonly Gauge[], unit: CoatingUnit): string {
  if (spot === undefined) return ''
  const gauge = gauges.find((own) => own.number === spot.gauge)
  if (gauge === undefined) return `Gauge not noted, mode ${spot.mode}.`
  const { notedThickness } = coatingMeasures({ ...metricUnits, coatingUnit: unit })
  const constant = gauge.errorUm === null ? null : `${notedThickness.figure(gauge.errorUm)}\u202f${unit}`
  const share = gauge.errorPercent === null ? null : `${gauge.errorPercent}\u202f%`
  const declared = [constant, share].filter((word) => word !== null).join(' + ')
  return `${gauge.name}, ${declared === '' ? 'error not declared' : `declared error ${declared}`}, mode ${spot.mode}.`
}

interface ReadingTableProps {
  readonly spots: readonly Spot[]
  readonly gauges: readonly Gauge[]
  readonly unit: CoatingUnit
}

/** Readings of the panel in hand: values, median, and half the range. Of many the newest, until all are asked for. */
export function ReadingTable({ spots, gauges, unit }: ReadingTableProps) {
  const [all, setAll] = useState(false)
  if (spots.length === 0) return <p className="note none-yet">no readings</p>
  const folded = all ? 0 : Math.max(0, spots.length - FEW_SPOTS)
  return (
    <>
      {spots.length > FEW_SPOTS ? (
        <p className="note">
          {all ? `all ${spots.length}` : `the newest ${FEW_SPOTS} of ${spots.length}`}{' '}
          <button type="button" className="reference-link is-words" onClick={() => setAll(!all)}>
            {all ? 'show the newest only' : 'show all'}
          </button>
        </p>
      ) : null}
      <table className="reading-table">
        <thead>
          <tr>
            <th scope="col" colSpan={2}>
              spot, and its readings
            </th>
            <th scope="col">median</th>
            <th scope="col">half range</th>
          </tr>
        </thead>
        <tbody>
          {spots.slice(folded).map((spot, at) => {
            const { median, spread } = summaryOf(spot.values)
            return (
              <tr key={spot.number}>
                <td className="figures quiet">{spotLetter(folded + at)}</td>
                <th scope="row">
                  <button
                    type="button"
                    className="spot-name"
                    onClick={() => enter({ kind: 'reading', amends: spot.number })}
                  >
                    <span className="unseen">Amend readings </span>
                    {spot.where === '' ? `R\u202f${spot.number}` : spot.where}
                  </button>
                  <span className="figures quiet spot-readings">{valuesText(spot, unit)}</span>
                </th>
                <td className="figures strong">{leastFigure(median, unit)}</td>
                <td className="figures">{leastFigure(spread, unit)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
      <p className="note">{gaugeText(spots.at(-1), gauges, unit)}</p>
    </>
  )
}
