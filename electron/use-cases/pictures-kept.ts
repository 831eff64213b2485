import type { KeptPicture } from '../../shared-types/measuring-view.ts'
import type { CarRecord } from '../record/car-record.ts'
import { tellsMeasured } from './measured-tells.ts'
import { measureOnPhotograph } from './picture-measures.ts'
import { sheetsOfRecord } from './sheets-of-record.ts'

/** Every measure on a photograph the record keeps, measured again from its picks, with what the tells that rest on it get of it. */
export async function keptPictures(record: CarRecord): Promise<readonly KeptPicture[]> {
  const view = record.view()
  const { compiled } = await sheetsOfRecord(record)
  const kept: KeptPicture[] = []
  for (const { number, measurement, picked } of view.exhibits) {
    if (picked === null || measurement === null) continue
    const answer = await measureOnPhotograph(view, picked)
    const { value, standard, unit } = answer.measured
    const resting = new Set(
      view.observations.filter(({ measured }) => measured?.from === number).map(({ tell }) => tell),
    )
    const tells = tellsMeasured(compiled, view.observations, { value, standardUncertainty: standard, unit })
    kept.push({
      exhibit: number,
      photograph: picked.photograph,
      what: measurement.what,
      answer,
      tells: tells.filter(({ key }) => resting.has(key)),
    })
  }
  return kept
}
