import { capital } from '../../../shared-types/capital.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import type { DateConflict, DatedRow } from '../../../shared-types/time-line-view.ts'
import { stretchWords } from '../../analysis/dating/interval-words.ts'
import { partDefinition } from '../../sheets/parts-list.ts'
import type { Argument } from './conflict-arguments.ts'
import { BUILT, type DatedThings } from './dated-things.ts'

const MOST_WAYS_OUT = 4
/** Ways that need more things to be wrong at once are told as a number. */
const MOST_NAMED_TOGETHER = 3

/** Arguments as short texts with their sources: what cannot all be, by how much, and the ways out. */
export function conflictsInWords(
  found: readonly Argument[],
  things: DatedThings,
  rows: readonly DatedRow[],
  view: RecordView,
): readonly DateConflict[] {
  return found.map((argument, at) => {
    const events = eventsOf(argument)
    const about = rows.filter(({ id }) => events.has(id))
    const part = about.find(({ kind }) => kind === 'part')
    const built = rows.find(({ id }) => id === BUILT)
    const from = part?.given[0]?.from ?? null
    const to = built?.narrowed.to ?? null
    return {
      number: at + 1,
      title: titleOf(about),
      cannotAllBe: argument.set.map(({ step }) => step),
      by:
        part?.standing === 'later than the car' && from !== null && to !== null && from > to
          ? stretchWords(to, from)
          : null,
      alsoAgainst: argument.alsoAgainst.filter((said) => 'event' in said && !said.onTrial).map(({ step }) => step),
      travelWithIt: part === undefined ? [] : travelling(part, rows, view),
      waysOut: waysOut(argument),
      rows: about.map(({ id }) => id),
    }
  })

  function eventsOf({ set }: Argument): ReadonlySet<string> {
    const named = set.flatMap((said) => ('event' in said ? [said.event] : [said.before, said.after]))
    return new Set(things.events.map(({ id }) => id).filter((id) => named.includes(id)))
  }
}

/** What the conflict is about: "Cylinder block against the building of the car". */
function titleOf(about: readonly DatedRow[]): string {
  const others = about.filter(({ id }) => id !== BUILT).map(({ label }) => label)
  if (others.length === 0) return 'Two grounds for the day of building'
  if (others.length < about.length) return `${others.join(' and ')} against the building of the car`
  return others.length === 1 ? `Two dates for one thing: ${others[0]}` : others.join(' against ')
}

function waysOut({ repairs }: Argument): readonly string[] {
  const told = repairs.map((repair) =>
    repair.length > MOST_NAMED_TOGETHER
      ? `Or ${repair.length} other things are wrong at once, each of those that speak against it.`
      : `${capital(repair.map(({ ifNot }) => ifNot).join(', and '))}.`,
  )
  return [...new Set(told)].slice(0, MOST_WAYS_OUT)
}

/** Parts of the same set that are later too: they came with it and are no further observation. */
function travelling(part: DatedRow, rows: readonly DatedRow[], view: RecordView): readonly string[] {
  const setOf = (id: string) => {
    const part = id.replace(/^part:/, '')
    const byWord = view.parts.find(({ partId }) => partId === part)?.countsWith ?? null
    return byWord === null ? (partDefinition(part)?.travelsWith ?? null) : byWord.set
  }
  const own = setOf(part.id)
  return rows
    .filter(
      ({ id, kind, standing }) =>
        kind === 'part' && id !== part.id && own !== null && setOf(id) === own && standing === part.standing,
    )
    .filter(({ id }) => view.parts.some(({ partId }) => `part:${partId}` === id))
    .map(({ label, asRead }) => `${label} ${asRead}`)
}
