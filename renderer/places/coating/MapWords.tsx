import type { CoatingMap } from '../../../shared-types/coating-map.ts'
import type { CoatingMeasures } from '../../../shared-types/coating-measures.ts'
import { nextLetter } from '../../drawing/MapPaper.tsx'
import { Said } from './Said.tsx'

interface MapSaid {
  readonly map: CoatingMap
  readonly measures: CoatingMeasures
}

/** Several lines about one thing; the head stands beside the first. */
function SaidLines({ head, lines }: { readonly head: string; readonly lines: readonly string[] }) {
  return lines.map((words, index) => (
    <Said key={words} head={index === 0 ? head : ''}>
      {words}
    </Said>
  ))
}

/** What the map says of the panel, and where to read next. */
function Conclusions({ map, measures }: MapSaid) {
  return (
    <dl>
      {map.conclusion === '' ? null : <Said head="Reads as">{map.conclusion}</Said>}
      <SaidLines head="Lead or filler" lines={map.modes} />
      {map.film === null ? null : <Said head="Paint">{map.film.words}</Said>}
      {map.fillerArea === null ? null : (
        <Said head={`Thicker than ${measures.thickness.text(map.thresholdUm)}`}>{map.fillerArea.words}</Said>
      )}
      {map.fillerVolume === null ? null : <Said head="Volume above the paint">{map.fillerVolume.words}</Said>}
      {map.next.map(({ words, at }, index) => (
        <Said key={`${at.u} ${at.v}`} head={index === 0 ? `Read next: ${nextLetter(index)}` : nextLetter(index)}>
          {words}
        </Said>
      ))}
      {map.stopping === '' ? null : <Said head="Reading on">{map.stopping}</Said>}
      <Said head="What the map cannot tell">{map.cannotTell}</Said>
    </dl>
  )
}

/** Gauge, checks, ranges and method: what the conclusions rest on. */
function Grounds({ map, measures: { surface } }: MapSaid) {
  return (
    <dl>
      {map.notAssessedM2 === null ? null : (
        <Said head="Surface">
          {`${surface.text(map.assessedM2)} mapped; ${surface.text(map.notAssessedM2)} not assessed: behind what stands before it in this view.`}
        </Said>
      )}
      {map.leftOut.length === 0 ? null : <Said head="Left out">{`${map.leftOut.join('; ')}.`}</Said>}
      <Said head="Gauge">{`${map.gauge}.`}</Said>
      <SaidLines head="Its checks" lines={map.checks} />
      {map.classes.length === 0 ? null : <Said head="By ranges">{`${map.classes.join('. ')}.`}</Said>}
      {map.ranges === '' ? null : <Said head="Ranges used">{map.ranges}</Said>}
      {map.method === '' ? null : <Said head="Method">{map.method}</Said>}
    </dl>
  )
}

/** Readings whose gauge or place speaks against them; never folded away. */
function Marked({ map }: { readonly map: CoatingMap }) {
  const marked = map.spots.filter((spot) => spot.marked)
  if (marked.length === 0) return null
  const lines = marked.map(({ spot, flags }) => `R\u202f${spot}: ${flags.join('; ')}.`)
  return (
    <dl>
      <SaidLines head="Struck through" lines={lines} />
    </dl>
  )
}

/** Everything the map says in words; the drawing says no more. What it rests on is folded away. */
export function MapWords({ map, measures }: MapSaid) {
  return (
    <>
      <Conclusions map={map} measures={measures} />
      <Marked map={map} />
      <details className="map-grounds">
        <summary>What this rests on: surface, gauge and checks, ranges, method</summary>
        <Grounds map={map} measures={measures} />
      </details>
    </>
  )
}
