import { lazy, Suspense, useEffect, useLayoutEffect } from 'react'
import { applyTokens } from './look/apply-tokens.ts'
import { KeyList } from './parts-of-page/KeyList.tsx'
import { PlacePage } from './parts-of-page/PlacePage.tsx'
import { useKeys } from './parts-of-page/useKeys.ts'
import { Rail } from './Rail.tsx'
import { placeList } from './store/place-list.ts'
import { goToPlace, showKeys, turnSheet, useScreenStore } from './store/screen-store.ts'
import { redo, undo } from './store/undo.ts'

const places = {
  records: lazy(() => import('./places/records/Records.tsx').then(({ Records }) => ({ default: Records }))),
  identity: lazy(() => import('./places/identity/Identity.tsx').then(({ Identity }) => ({ default: Identity }))),
  'walk-round': lazy(() =>
    import('./places/walk-round/WalkRound.tsx').then(({ WalkRound }) => ({ default: WalkRound })),
  ),
  coating: lazy(() => import('./places/coating/Coating.tsx').then(({ Coating }) => ({ default: Coating }))),
  parts: lazy(() => import('./places/parts/Parts.tsx').then(({ Parts }) => ({ default: Parts }))),
  measuring: lazy(() => import('./places/measuring/Measuring.tsx').then(({ Measuring }) => ({ default: Measuring }))),
  judgement: lazy(() => import('./places/judgement/Judgement.tsx').then(({ Judgement }) => ({ default: Judgement }))),
  'putting-right': lazy(() =>
    import('./places/putting-right/PuttingRight.tsx').then(({ PuttingRight }) => ({ default: PuttingRight })),
  ),
  report: lazy(() => import('./places/report/Report.tsx').then(({ Report }) => ({ default: Report }))),
  history: lazy(() => import('./places/history/History.tsx').then(({ History }) => ({ default: History }))),
}

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
  useProgramKeys()
  useLayoutEffect(() => applyTokens(sheetName), [sheetName])
  const name = placeList.find(({ id }) => id === place)?.name ?? ''
  useEffect(() => {
    document.title = `${name} · Witnessmark`
  }, [name])
  const Place = places[place]
  return (
    <div className="program">
      <Rail place={place} />
      <Suspense fallback={<PlacePage name={name}>{null}</PlacePage>}>
        <Place key={place} />
      </Suspense>
      {keysShown ? <KeyList /> : null}
    </div>
  )
}
