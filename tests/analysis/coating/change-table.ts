import { NINETY_BAND } from '../../../electron/analysis/coating/interval-trust.ts'
import { type ChangeRow, changeCoverage } from './change-study.ts'
import { besideBand } from './coverage-table.ts'
import { correctionKinds } from './simulated-corrections.ts'

/** The study of differences as a table for those who build: every number of readings, then by what was done. */
export function changeTable(rows: readonly (readonly ChangeRow[])[]): string {
  const figures = (own: readonly ChangeRow[], extent: 'area' | 'volume'): string => {
    const { share, medianWidth, wronglyTold, lessened, toldLess } = changeCoverage(own, extent)
    return `${share.toFixed(3)} | ${medianWidth.toFixed(2)} | ${toldLess} of ${lessened} | ${wronglyTold}`
  }
  const line = (readings: number, name: string, own: readonly ChangeRow[]): string =>
    `| ${readings} | ${name} | ${own.length} | ${figures(own, 'area')} | ${figures(own, 'volume')} |`
  const readingsOf = (own: readonly ChangeRow[]): number => own[0]?.readings ?? 0
  const shares = rows.flatMap((own) =>
    (['area', 'volume'] as const).map((extent) => ({
      what: `${extent} at ${readingsOf(own)} readings`,
      share: changeCoverage(own, extent).share,
    })),
  )
  return [
    '| readings each time | work | pairs | area: held | width | told less | wrongly told | volume: held | width | told less | wrongly told |',
    '| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |',
    ...rows.map((own) => line(readingsOf(own), 'all', own)),
    ...rows.flatMap((own) =>
      correctionKinds.map((kind) =>
        line(
          readingsOf(own),
          kind,
          own.filter((row) => row.kind === kind),
        ),
      ),
    ),
    '',
    `Held: share of pairs whose true difference lay in the interval of nominally 90 %; by ${NINETY_BAND[0]} to ${NINETY_BAND[1]} for 400 pairs it may be`,
    'called that. Width is a median by what lay there before. Told less: of pairs whose filler became less by a fifth or more, those',
    'whose whole interval lay below nought. Wrongly told: pairs said to be less or more whose truth was not.',
    besideBand(shares),
  ].join('\n')
}
