import { useCallback } from 'react'
import { panelName } from '../../shared-types/panel.ts'
import { useRecordStore } from './record-store.ts'

/** Name of a panel by its id, in the chosen English; the id itself where this car's list does not have it. */
export function usePanelNames(): (panelId: string) => string {
  const panels = useRecordStore((state) => state.panelList?.panels)
  const names = useRecordStore((state) => state.record?.commission.names ?? 'uk')
  return useCallback(
    (panelId) => {
      const found = panels?.find((panel) => panel.id === panelId)
      return found === undefined ? panelId : panelName(found, names)
    },
    [panels, names],
  )
}
