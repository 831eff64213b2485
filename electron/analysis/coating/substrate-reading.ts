import type { CoatingPrinciple, CoatingSubstrate, SubstrateReach } from '../../../shared-types/coating.ts'

/** What the table says of a principle over a substrate; a pair it does not name is answered as not known, never as good. */
export function substrateReading(
  table: readonly SubstrateReach[],
  principle: CoatingPrinciple,
  substrate: CoatingSubstrate,
): SubstrateReach {
  return (
    table.find((row) => row.principle === principle && row.substrate === substrate) ?? {
      principle,
      substrate,
      reads: 'with care',
      shows: 'Not known: try the gauge on a bare piece of the same material first.',
      source: 'common practice, no source',
    }
  )
}

/**
 * Warning where the probe stands too near an edge or on too tight a curve; null where it does not. A probe's own manual goes
 * before this: one diameter from an edge and a radius of twenty diameters are common practice, no source.
 */
export function probeWarning(
  probeDiameterMm: number,
  edgeMm: number,
  curveRadiusMm: number,
): 'too near an edge' | 'too tightly curved' | null {
  if (edgeMm < probeDiameterMm) return 'too near an edge'
  return curveRadiusMm < 20 * probeDiameterMm ? 'too tightly curved' : null
}
