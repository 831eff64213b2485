import type { ReactNode } from 'react'
import type { SheetName } from '../shared-types/tokens.ts'
import { KeyCap } from './parts-of-page/KeyCap.tsx'
import { type PlaceId, placeList } from './store/place-list.ts'
import { useRecordStore } from './store/record-store.ts'
import { sheetNames } from './store/start-of-page.ts'

interface RailProps {
  readonly place: PlaceId
  /** The sheet in use. */
  readonly sheetName: SheetName
  readonly onPlace: (place: PlaceId) => void
  readonly onSheet: (sheetName: SheetName) => void
  readonly onKeys: () => void
  /** What stands above the foot: where to look next, once a record is open. */
  readonly looks?: ReactNode
}

/** The mark of the program: a trace a part left, seen through a lens. */
function ProgramMark() {
  return (
    <svg className="program-mark" viewBox="0 0 24 24" aria-hidden="true">
      <circle cx="12" cy="12" r="7.5" />
      <circle cx="12" cy="12" r="3" />
      <path d="M12 1.5 V6 M12 18 V22.5 M1.5 12 H6 M18 12 H22.5" />
    </svg>
  )
}

/** The three sheets to read on, the one in use underlined. */
function SheetChoice({ sheetName, onSheet }: Pick<RailProps, 'sheetName' | 'onSheet'>) {
  return (
    <fieldset className="sheet-choice">
      <legend className="rail-word">
        Sheet <KeyCap keys="Alt+N" />
      </legend>
      {sheetNames.map((name) => (
        <button
          key={name}
          type="button"
          className="sheet-name"
          aria-pressed={name === sheetName}
          onClick={() => onSheet(name)}
        >
          {name}
        </button>
      ))}
    </fieldset>
  )
}

/** The left rail: the ten places, the sheet to read on, and how names and units are shown. */
export function Rail({ place, sheetName, onPlace, onSheet, onKeys, looks }: RailProps) {
  const commission = useRecordStore((state) => state.record?.commission)
  return (
    <nav className="rail" aria-label="Places">
      <div className="rail-name">
        <ProgramMark />
        <span>
          Witness-
          <br />
          mark
        </span>
      </div>
      <ul>
        {placeList.map(({ id, name, figure }) => (
          <li key={id}>
            <button
              type="button"
              className="rail-row"
              aria-current={id === place ? 'page' : undefined}
              aria-keyshortcuts={`Alt+${figure}`}
              onClick={() => onPlace(id)}
            >
              <span className="rail-word">{name}</span>
              <span className="figures" aria-hidden="true">
                {figure}
              </span>
            </button>
          </li>
        ))}
      </ul>
      <div className="rail-foot">
        {looks}
        <p className="rail-word">Alt + figure goes to a place</p>
        <button type="button" className="action-key" onClick={onKeys}>
          <KeyCap keys="?" />
          <span className="rail-word" aria-hidden="true">
            keys
          </span>
          <span className="unseen">List of keys</span>
        </button>
        <SheetChoice sheetName={sheetName} onSheet={onSheet} />
        {commission === undefined ? null : (
          <p className="rail-word">
            Names: {commission.names.toUpperCase()}
            <br />
            Units: {commission.lengthUnit}, {commission.coatingUnit}
            <br />
            Sides from the driver’s seat
          </p>
        )}
      </div>
    </nav>
  )
}
