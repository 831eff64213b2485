import { useCallback, useEffect, useState } from 'react'
import type { RecordView } from '../../../shared-types/record.ts'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { CarLists } from './CarLists.tsx'
import { IdentitySheet, type Opened } from './IdentitySheet.tsx'
import { Inference } from './Inference.tsx'
import '../place-lines.css'
import './identity.css'

const pointedAt = ['claim', 'carNumber', 'visit', 'particulars', 'commission'] as const

/** Goes to the row a reference pointed at, once. */
function usePointedRow(open: (opened: Opened) => void): void {
  const pointed = useScreenStore((state) => state.pointed)
  useEffect(() => {
    const what = pointedAt.find((kind) => kind === pointed?.kind)
    if (pointed === null || what === undefined) return
    open({ what, key: pointed.key, field: pointed.field })
    useScreenStore.setState({ pointed: null })
  }, [pointed, open])
}

function IdentityPage({ record }: { readonly record: RecordView }) {
  const [opened, setOpened] = useState<Opened | null>(null)
  usePointedRow(setOpened)
  const { readOnly } = record
  const open = useCallback(
    (what: Opened['what'], key: string | null = null) => {
      if (!readOnly) setOpened({ what, key })
    },
    [readOnly],
  )
  const add = (what: Opened['what']) => () => open(what)
  useKeys('Identity', [
    { keys: 'N', does: 'add a number', run: add('carNumber') },
    { keys: 'C', does: 'add a claim', run: add('claim') },
    { keys: 'V', does: 'add a visit', run: add('visit') },
    { keys: 'P', does: 'amend the particulars', run: add('particulars') },
    { keys: 'M', does: 'amend the commission', run: add('commission') },
  ])
  return (
    <PlacePage
      name="Identity"
      sheetName="Entry"
      {...(opened === null
        ? {}
        : { sheet: <IdentitySheet record={record} opened={opened} onLeave={() => setOpened(null)} /> })}
    >
      <Inference record={record} />
      <CarLists record={record} opened={opened} onOpen={open} />
    </PlacePage>
  )
}

/** Identity: what the car can still be, what it is said to be, and what its numbers say. */
export function Identity() {
  return <RecordPlace name="Identity">{(record) => <IdentityPage record={record} />}</RecordPlace>
}
