import { z } from 'zod'
import { type BodyStyle, bodyStyle } from '../../../shared-types/words.ts'
import { readList } from '../../sheets/list-file.ts'

const share = z.number().min(0).max(2)
const nullableShare = share.nullable()

/**
 * The shape of one body in three dimensions: what makes it this body and no other, as shares of its named dimensions, so
 * that it follows when a car sets its own. Proportions of invented cars of the 1950s and 1960s.
 */
export const bodyDescription = z.strictObject({
  body: bodyStyle,
  title: z.string().min(1),
  /** How the body ends behind the cabin: boot lid and deck, upright tail, or open bed. */
  tail: z.enum(['deck', 'upright', 'bed']),
  /** Seen from above. Rounding as shares of the overhangs; squareness is the exponent of the superellipse. */
  plan: z.strictObject({
    noseRound: share,
    noseSquare: z.number().min(2).max(8),
    tailRound: share,
    tailSquare: z.number().min(2).max(8),
    /** Crest of the wings inside the fullest line, and foot of the body inside it, shares of half the width. */
    crestInset: share,
    footInset: share,
    /** How far crest and foot stand back from the fullest line at the nose and the tail, shares of the overhang. */
    noseCrestBack: share,
    noseFootBack: share,
    tailCrestBack: share,
    tailFootBack: share,
    /** Width of bonnet and lid where they begin, shares of half the width. */
    bonnetFront: share,
    lid: share,
    lamp: share,
    rearLamp: share,
  }),
  /** Seen from the side: shares of the height of the belt. */
  heights: z.strictObject({
    fullest: share,
    noseCrest: share,
    tailCrest: share,
    noseFoot: share,
    tailFoot: share,
    bonnetCrown: share,
    deckCrown: share,
    lampMiddle: share,
    lampBowl: share,
    lidFoot: share,
    rearLampFoot: share,
  }),
  /** Stations of the cabin: shares of the wheelbase behind the front axle. */
  stations: z.strictObject({
    bonnetFront: share,
    cowl: share,
    screenFoot: share,
    doorFront: share,
    doorRear: share,
    postFront: share,
    postRear: share,
    rearDoorFrameRear: nullableShare,
    rearPostRear: nullableShare,
    sideGlassRear: nullableShare,
    roofPeak: share,
    /** Foot of the rear screen at the centre line; null where the body ends upright. */
    rearScreenFoot: nullableShare,
    lidFront: nullableShare,
    cabRear: nullableShare,
    heelBoard: share,
    cabinRear: share,
  }),
  /** Falls of the roof from its peak to header and rear edge, and its crown over the gutter, shares of the height. */
  roof: z.strictObject({ headerFall: share, rearFall: share, crown: share }),
})
export type BodyDescription = z.infer<typeof bodyDescription>

const read = new Map<BodyStyle, BodyDescription>()

/** The description of a body, from `resources/body-plans`. */
export function describedBody(body: BodyStyle): BodyDescription {
  const known = read.get(body)
  if (known) return known
  const description = readList(`${body}.json`, bodyDescription, 'body-plans')
  read.set(body, description)
  return description
}
