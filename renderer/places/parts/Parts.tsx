import { useEffect, useMemo, useRef, useState } from 'react'
import type { PartDefinition } from '../../../shared-types/part.ts'
import type { PartExpectation } from '../../../shared-types/part-expectation.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { useRecordStore } from '../../store/record-store.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { Dates } from './dates/Dates.tsx'
import { GroupCounts } from './GroupCounts.tsx'
import { PartFilterFields } from './PartFilterFields.tsx'
import { PartSearches } from './PartSearches.tsx'
import { PartSheet } from './PartSheet.tsx'
import { PartTable } from './PartTable.tsx'
import { filteredRows, groupCounts, type PartFilter, type PartRow, partRows } from './part-rows.ts'
import { useExpectations } from './use-expectations.ts'
import '../place-lines.css'
import './parts.css'

const everything: PartFilter = { group: '', text: '', state: 'any', onlyOpen: false }

function usePartRows(
  partList: readonly PartDefinition[],
  record: RecordView,
  judged: ReadonlyMap<string, PartExpectation>,
): readonly PartRow[] {
  const before = useRef<readonly PartRow[]>([])
  const { parts, commission } = record
  const rows = useMemo(
    () => partRows(partList, parts, commission.names, before.current, judged),
    [partList, parts, commission, judged],
  )
  useEffect(() => {
    before.current = rows
  }, [rows])
  return rows
}

function PartsPage({ record }: { readonly record: RecordView }) {
  const partList = useRecordStore((state) => state.partList)
  const pointed = useScreenStore((state) => state.pointed)
  const [filter, setFilter] = useState(everything)
  const [inHand, setInHand] = useState<string | null>(null)
  const { byPart, problem: noExpectation } = useExpectations(record)
  const rows = usePartRows(partList, record, byPart)
  const counts = useMemo(() => groupCounts(rows), [rows])
  // The part in hand stays in the list while it is worked on, also when the filter would now leave it out.
  const shown = useMemo(() => {
    const left = new Set(filteredRows(rows, filter))
    return rows.filter((row) => left.has(row) || row.definition.id === inHand)
  }, [rows, filter, inHand])
  useEffect(() => {
    if (pointed?.kind !== 'part') return
    setInHand(pointed.key)
    useScreenStore.setState({ pointed: null })
  }, [pointed])
  const place = shown.findIndex((row) => row.definition.id === inHand)
  const row = shown[place]
  // Back to the row that was worked on, so that the arrows go on from there.
  const leave = () => {
    const worked = inHand
    setInHand(null)
    requestAnimationFrame(() => {
      const rowsShown = document.querySelectorAll<HTMLElement>('.register-row')
      ;[...rowsShown].find((shownRow) => shownRow.dataset.key === worked)?.focus()
    })
  }
  const step = (by: number) => {
    const next = shown[place + by]
    if (next !== undefined) setInHand(next.definition.id)
  }
  return (
    <PlacePage
      name="Parts"
      sheetName="Part in hand"
      {...(row === undefined
        ? {}
        : {
            sheet: (
              <PartSheet
                key={row.definition.id}
                row={row}
                expectation={byPart.get(row.definition.id) ?? null}
                noExpectation={noExpectation}
                readOnly={record.readOnly}
                at={`${place + 1} of ${shown.length} shown`}
                onStep={step}
                onLeave={leave}
              />
            ),
          })}
    >
      <Dates record={record} />
      <div className="parts-columns">
        <GroupCounts counts={counts} group={filter.group} onGroup={(group) => setFilter({ ...filter, group })} />
        <div>
          <PartSearches partId={inHand} follows={record.journalNumber} />
          <PartFilterFields
            filter={filter}
            shown={shown.length}
            all={rows.length}
            onChange={setFilter}
            onEverything={() => setFilter(everything)}
          />
          <PartTable rows={shown} inHand={inHand} onOpen={setInHand} />
        </div>
      </div>
    </PlacePage>
  )
}

/** Parts: the register of what this car could carry, and what was found of each; down the list by keyboard. */
export function Parts() {
  return <RecordPlace name="Parts">{(record) => <PartsPage record={record} />}</RecordPlace>
}
