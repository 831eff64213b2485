import type { PicturePoint } from '../../../../shared-types/measuring.ts'

export interface PictureSize {
  readonly widthPx: number
  readonly heightPx: number
}

/** The part of a picture in sight: its middle, in picture pixels, and how many of them a screen pixel shows. */
export interface Sight {
  readonly middle: PicturePoint
  readonly perPx: number
}

/** Most a picture is enlarged: a picture pixel becomes this many of the screen. */
const MOST_ENLARGED = 16

/** The whole picture in a frame of that size, screen pixels. */
export function wholePicture({ widthPx, heightPx }: PictureSize, width: number, height: number): Sight {
  return {
    middle: { x: widthPx / 2, y: heightPx / 2 },
    perPx: Math.max(widthPx / Math.max(1, width), heightPx / Math.max(1, height)),
  }
}

const within = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value))

/** Zoomed by a factor about a place of the picture, which stays where it is on the screen; never past the whole. */
export function zoomed(sight: Sight, factor: number, about: PicturePoint, whole: Sight): Sight {
  const perPx = within(sight.perPx / factor, 1 / MOST_ENLARGED, whole.perPx)
  const share = perPx / sight.perPx
  return {
    perPx,
    middle: { x: about.x + (sight.middle.x - about.x) * share, y: about.y + (sight.middle.y - about.y) * share },
  }
}

/** Moved so that no more paper than needed shows beside the picture. */
export function onPicture({ middle, perPx }: Sight, size: PictureSize, width: number, height: number): Sight {
  const half = { x: (width * perPx) / 2, y: (height * perPx) / 2 }
  const held = (at: number, halfSeen: number, long: number) =>
    2 * halfSeen >= long ? long / 2 : within(at, halfSeen, long - halfSeen)
  return { perPx, middle: { x: held(middle.x, half.x, size.widthPx), y: held(middle.y, half.y, size.heightPx) } }
}

/** Moved just so far that a point is in sight, with some room round it. */
export function showing(sight: Sight, point: PicturePoint, width: number, height: number): Sight {
  const reach = (length: number) => Math.max(0, (length * sight.perPx) / 2 - length * sight.perPx * 0.1)
  return {
    perPx: sight.perPx,
    middle: {
      x: within(sight.middle.x, point.x - reach(width), point.x + reach(width)),
      y: within(sight.middle.y, point.y - reach(height), point.y + reach(height)),
    },
  }
}

/** A place of the frame, screen pixels from its corner, as a place of the picture. */
export function pointAt(sight: Sight, at: PicturePoint, width: number, height: number): PicturePoint {
  return {
    x: sight.middle.x + (at.x - width / 2) * sight.perPx,
    y: sight.middle.y + (at.y - height / 2) * sight.perPx,
  }
}

/** Inside the picture, to a tenth of a pixel. */
export function inPicture(point: PicturePoint, { widthPx, heightPx }: PictureSize): PicturePoint {
  const tenth = (value: number) => Math.round(value * 10) / 10
  return { x: tenth(within(point.x, 0, widthPx)), y: tenth(within(point.y, 0, heightPx)) }
}
