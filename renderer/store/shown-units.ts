import { metricUnits, type ShownUnits } from '../../shared-types/units.ts'
import { useRecordStore } from './record-store.ts'

/** The units of the open record; metric where none is open. */
export const useShownUnits = (): ShownUnits => useRecordStore((state) => state.record?.commission ?? metricUnits)
