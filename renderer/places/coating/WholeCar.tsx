import type { CarFilmRow, CoatingCar } from '../../../shared-types/coating-car.ts'
import { coatingFigure } from '../../../shared-types/coating-measures.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { leastForm } from '../../parts-of-page/number-forms.ts'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useAnswer } from '../../store/use-answer.ts'
import { Said } from './Said.tsx'
import './whole-car.css'

const share = (of: number): string => `${(100 * of).toFixed(2)}%`

/** Spread and median of one panel on the scale of the car; an open mark belongs to another paint job than most, likelier than not. */
function FilmStrip({ row, ticks }: { readonly row: CarFilmRow; readonly ticks: CoatingCar['ticks'] }) {
  const other = (row.otherChance ?? 0) >= 0.5
  return (
    <svg className="film-strip" width="100%" height="18" aria-hidden="true">
      {ticks.map(({ um, at }) => (
        <line key={um} className="film-tick" x1={share(at)} x2={share(at)} y1="0" y2="18" />
      ))}
      <line className="film-spread" x1={share(row.at.least)} x2={share(row.at.most)} y1="9" y2="9" />
      <circle className={other ? 'film-middle is-other' : 'film-middle'} cx={share(row.at.middle)} cy="9" r="4" />
    </svg>
  )
}

const chanceWords = (chance: number | null): string => {
  if (chance === null) return 'not compared'
  if (chance > 0.995) return 'over 99\u202f%'
  return chance < 0.005 ? 'under 1\u202f%' : `${Math.round(100 * chance)}\u202f%`
}

/** Every panel read on one scale, with the chance of another paint job, left against right, and steps at seams. */
export function WholeCar({ record }: { readonly record: RecordView }) {
  const unit = record.commission.coatingUnit
  const { value: car, problem } = useAnswer('coating.car', {}, record.journalNumber)
  if (record.spots.length === 0) return null
  if (car === null) return <ProblemNote problem={problem} />
  return (
    <Section head="The whole car" level="column" beside={`median and spread of spots on one scale, ${unit}`}>
      <table className="film-table">
        <thead>
          <tr>
            <th scope="col">panel</th>
            <th scope="col">median</th>
            <th scope="col">thinnest to thickest</th>
            <th scope="col">
              <span className="unseen">on the scale</span>
              <span className="film-scale" aria-hidden="true">
                {car.ticks.map(({ um, at }) => (
                  <span key={um} style={{ left: share(at) }}>
                    {coatingFigure(um, unit)}
                  </span>
                ))}
              </span>
            </th>
            <th scope="col">chance of another paint job</th>
          </tr>
        </thead>
        <tbody>
          {car.rows.map((row) => (
            <tr key={row.panelId}>
              <th scope="row">{row.name}</th>
              <td className="figure">{coatingFigure(row.middleUm, unit)}</td>
              <td className="figure">
                {`${coatingFigure(row.leastUm, unit)} to ${leastForm(coatingFigure(row.mostUm, unit), row.mostOrMore)}`}
              </td>
              <td>
                <FilmStrip row={row} ticks={car.ticks} />
              </td>
              <td className="figure">{chanceWords(row.otherChance)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note">
        Spots as put right by the gauge’s checks; the scale is logarithmic. Line: thinnest to thickest spot. Mark:
        median; an open mark is likelier than not another paint job than that of most panels.
      </p>
      <dl>
        <Lines head="Paint jobs" lines={car.films} />
        <Lines head="Left and right" lines={car.sides} />
        <Lines head="At seams" lines={car.seams} />
        <Said head="What films cannot tell">{car.cannotTell}</Said>
      </dl>
    </Section>
  )
}

function Lines({ head, lines }: { readonly head: string; readonly lines: readonly string[] }) {
  return lines.map((line, index) => (
    <Said key={line} head={index === 0 ? head : ''}>
      {line}
    </Said>
  ))
}
