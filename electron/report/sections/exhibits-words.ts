import type { Exhibit } from '../../../shared-types/exhibit.ts'
import type { Composer } from '../layout/composer.ts'
import type { Span } from '../layout/line-breaking.ts'
import { styles, type TextStyle } from '../layout/text-style.ts'
import { figure } from '../wording/numbers.ts'
import { numbered, place } from '../wording/references.ts'

/** Captions up to this length always stand whole below their photograph. */
const SHORT_CAPTION = 200

/** Whether a caption may be too long to stand below its photograph, and is printed in the table as well. */
export const captionRunsOn = ({ caption }: Exhibit): boolean => caption.length > SHORT_CAPTION || caption.includes('\n')

/** Where on the car, else where it was made. */
export function placeWords(composer: Composer, exhibit: Exhibit, style: TextStyle): Span[] {
  const position = cameraPosition(composer, exhibit)
  const said = [exhibit.place, position].filter((word) => word !== '').join('; ')
  const words = said === '' ? [] : [{ text: said, style }]
  if (exhibit.panelId === null) return words.length === 0 ? [{ text: 'not stated', style }] : words
  const panel = composer.linked(composer.panelName(exhibit.panelId), style, place.panel(exhibit.panelId))
  return words.length === 0 ? [panel] : [panel, { text: ', ', style }, ...words]
}

/** Where the camera says it was, only where the client agreed to positions; empty otherwise. */
function cameraPosition(composer: Composer, { photograph }: Exhibit): string {
  if (!composer.content.record.commission.positionsInReports || photograph === null) return ''
  const { latitude, longitude } = photograph
  if (latitude === null || longitude === null) return ''
  return `position ${figure(latitude, 5)}°, ${figure(longitude, 5)}° as the camera gave it`
}

/** A tell by its name in the sheet; by its key where the sheet has left the record since. */
const tellName = (composer: Composer, key: string): string =>
  `tell “${composer.content.identity?.tells.find((tell) => tell.key === key)?.name ?? key}”`

/** Everything in the record that cites an exhibit, each leading to its place. */
export function citedBy(composer: Composer, number: number, style: TextStyle) {
  const { record } = composer.content
  const strong: TextStyle = { ...style, face: 'strong', colour: styles.reference.colour }
  const cites = (row: { readonly exhibits: readonly number[] }) => row.exhibits.includes(number)
  const spans: Span[] = [
    ...record.findings.filter(cites).map((row) => composer.finding(row.number, strong)),
    ...record.claims
      .filter(cites)
      .map((row) => composer.linked(numbered('C', row.number), style, place.claim(row.number))),
    ...record.carNumbers
      .filter(cites)
      .map((row) => composer.linked(numbered('N', row.number), style, place.carNumber(row.number))),
    ...record.spots
      .filter(cites)
      .map((row) => composer.linked(numbered('R', row.number), style, place.spot(row.number))),
    ...record.corrections
      .filter((row) => [...row.exhibitsBefore, ...row.exhibitsAfter].includes(number))
      .map((row) => composer.linked(numbered('K', row.number), style, place.correction(row.number))),
    ...record.exhibits
      .filter(({ picked }) => picked?.photograph === number)
      .map((row) => composer.exhibit(row.number, strong)),
    ...record.observations.filter(cites).map(({ tell }): Span => ({ text: tellName(composer, tell), style: strong })),
    ...record.parts
      .filter(cites)
      .map((row) => composer.linked(composer.partName(row.partId), style, place.part(row.partId))),
  ]
  return composer.list(spans, 'nothing', style)
}
