import { useEffect, useLayoutEffect } from 'react'
import { applyTokens } from './look/apply-tokens.ts'
import { KeyList } from './parts-of-page/KeyList.tsx'
import { LookNext } from './parts-of-page/LookNext.tsx'
import { PlacePage } from './parts-of-page/PlacePage.tsx'
import { useKeys } from './parts-of-page/useKeys.ts'
import { usePlace } from './places-on-demand.ts'
import { Rail } from './Rail.tsx'
import { placeList } from './store/place-list.ts'
import { useRecordStore } from './store/record-store.ts'
import { goToPlace, showKeys, takeSheet, turnSheet, useScreenStore } from './store/screen-store.ts'
import { redo, undo } from './store/undo.ts'

function useProgramKeys(): void {
  useKeys('Everywhere', [
    ...placeList.map(({ id, name, figure }) => ({
      keys: `Alt+${figure}`,
      does: name,
      run: () => goToPlace(id),
      whileTyping: true,
    })),
    { keys: 'Ctrl+Z', does: 'undo the last change', run: undo },
    { keys: 'Ctrl+Shift+Z', does: 'do again what was undone', run: redo },
    { keys: 'Ctrl+Y', does: 'do again what was undone', run: redo, unlisted: true },
    { keys: 'Alt+N', does: 'turn the sheet: paper, night, outdoor', run: turnSheet, whileTyping: true },
    { keys: '?', does: 'list of keys', run: () => showKeys(true) },
  ])
}

/** The whole page: the rail, and the place it names. */
export function Program() {
  const place = useScreenStore((state) => state.place)
  const sheetName = useScreenStore((state) => state.sheetName)
  const keysShown = useScreenStore((state) => state.keysShown)
  // Only a record with a sheet has anything to say about where to look.
  const follows = useRecordStore(({ record }) =>
    record === null || record.sheets.length === 0 ? null : record.journalNumber,
  )
  useProgramKeys()
  useLayoutEffect(() => applyTokens(sheetName), [sheetName])
  const name = placeList.find(({ id }) => id === place)?.name ?? ''
  useEffect(() => {
    document.title = `${name} · Witnessmark`
  }, [name])
  const Place = usePlace(place)
  return (
    <div className="program">
      <Rail
        place={place}
        sheetName={sheetName}
        onPlace={goToPlace}
        onSheet={takeSheet}
        onKeys={() => showKeys(true)}
        looks={follows === null ? null : <LookNext follows={follows} />}
      />
      {Place === null ? <PlacePage name={name}>{null}</PlacePage> : <Place key={place} />}
      {keysShown ? <KeyList /> : null}
    </div>
  )
}
