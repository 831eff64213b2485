import type { ComponentType } from 'react'
import type { PlaceId } from './store/place-list.ts'

/** Fetches the code of each place and answers its component; asked again, it answers what was fetched. */
export const placeCode: Readonly<Record<PlaceId, () => Promise<ComponentType>>> = {
  records: async () => (await import('./places/records/Records.tsx')).Records,
  identity: async () => (await import('./places/identity/Identity.tsx')).Identity,
  'walk-round': async () => (await import('./places/walk-round/WalkRound.tsx')).WalkRound,
  coating: async () => (await import('./places/coating/Coating.tsx')).Coating,
  parts: async () => (await import('./places/parts/Parts.tsx')).Parts,
  measuring: async () => (await import('./places/measuring/Measuring.tsx')).Measuring,
  judgement: async () => (await import('./places/judgement/Judgement.tsx')).Judgement,
  'putting-right': async () => (await import('./places/putting-right/PuttingRight.tsx')).PuttingRight,
  report: async () => (await import('./places/report/Report.tsx')).Report,
  history: async () => (await import('./places/history/History.tsx')).History,
}
