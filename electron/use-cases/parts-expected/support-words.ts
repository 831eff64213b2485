import type { SupportInWords } from '../../../shared-types/support-scale.ts'
import { thousands } from '../../../shared-types/thousands.ts'

/** Both ends of a range of support. */
interface Ends {
  readonly low: SupportInWords
  readonly high: SupportInWords
}

const side = ({ supports }: SupportInWords): string =>
  supports === 'first' ? 'for the factory' : supports === 'second' ? 'for another car or spares' : 'neither way'

/** A ratio as printed, over 1 whichever way it speaks. */
function ratioText({ likelihoodRatio, decisive }: SupportInWords): string {
  if (decisive || likelihoodRatio === null) return 'without bound'
  const size = likelihoodRatio < 1 ? 1 / likelihoodRatio : likelihoodRatio
  return `${size < 10 ? size.toFixed(1) : thousands(String(Math.round(size)))} to 1`
}

const bandText = ({ band }: SupportInWords): string =>
  band.to === null
    ? `over ${thousands(String(band.from))}`
    : `${thousands(String(band.from))} to ${thousands(String(band.to))}`

const oneEnd = (end: SupportInWords): string =>
  end.supports === 'neither'
    ? `no support (under ${bandText(end).split(' to ')[1] ?? '2'})`
    : `${end.band.words} (${bandText(end)}) ${side(end)}`

/** Support in words of the published scale with its bands, both ends where they differ: "weak (2 to 10) for the factory". */
export function supportWords({ low, high }: Ends): string {
  const [from, to] = [oneEnd(low), oneEnd(high)]
  return from === to ? from : `from ${from} to ${to}`
}

/** The ratio itself, or both of its ends. */
export function ratioWords({ low, high }: Ends): string {
  const [from, to] = [ratioText(low), ratioText(high)]
  return from === to ? from : `${from} up to ${to}`
}
