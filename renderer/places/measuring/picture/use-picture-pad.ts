import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react'
import type { PicturePoint } from '../../../../shared-types/measuring.ts'
import { hearGestures } from '../../../drawing/plan-gestures.ts'
import type { PadAct } from './pad-keys.ts'
import { allPoints, nextPoint, withoutLast, withPoint } from './picked-points.ts'
import type { PictureEntry } from './picture-entry.ts'
import {
  inPicture,
  onPicture,
  type PictureSize,
  pointAt,
  type Sight,
  showing,
  wholePicture,
  zoomed,
} from './picture-sight.ts'

/** A coarse step, as a share of what is in sight. */
const COARSE = 1 / 20

export interface PicturePad {
  readonly sight: Sight
  readonly cross: PicturePoint
  readonly inHand: number | null
  readonly act: (act: PadAct) => void
  /** Sets the next point at a place of the frame, and takes it in hand for nudging. */
  readonly press: (at: PicturePoint) => void
  readonly take: (index: number) => void
  /** Moves the point in hand to a place of the frame. */
  readonly drag: (at: PicturePoint) => void
}

interface PadPlan {
  readonly ground: RefObject<HTMLElement | null>
  readonly size: PictureSize
  readonly width: number
  readonly height: number
  readonly entry: PictureEntry
  readonly set: (points: Partial<PictureEntry>) => void
}

/** What is in sight of the picture, where the cross stands and which point is in hand; every way to change them. */
export function usePicturePad({ ground, size, width, height, entry, set }: PadPlan): PicturePad {
  const whole = wholePicture(size, width, height)
  const [seen, setSeen] = useState<Sight | null>(null)
  const [cross, setCross] = useState<PicturePoint>(() => ({
    x: Math.round(size.widthPx / 2),
    y: Math.round(size.heightPx / 2),
  }))
  const [inHand, setInHand] = useState<number | null>(null)
  const sight = onPicture(seen ?? whole, size, width, height)
  const place = (at: PicturePoint) => inPicture(pointAt(sight, at, width, height), size)

  const gesture = useRef<(factor: number, at: PicturePoint, by: PicturePoint) => void>(() => undefined)
  useLayoutEffect(() => {
    gesture.current = (factor, at, by) => {
      const zoomedTo = zoomed(sight, factor, pointAt(sight, at, width, height), whole)
      const { perPx, middle } = zoomedTo
      setSeen(
        onPicture({ perPx, middle: { x: middle.x - by.x * perPx, y: middle.y - by.y * perPx } }, size, width, height),
      )
    }
  })
  useEffect(() => {
    const element = ground.current
    return element === null ? undefined : hearGestures(element, ({ factor, at, by }) => gesture.current(factor, at, by))
  }, [ground])

  const crossTo = (to: PicturePoint, from: Sight = sight) => {
    setCross(to)
    setSeen(onPicture(showing(from, to, width, height), size, width, height))
  }
  const put = (index: number, point: PicturePoint) => set(withPoint(entry, index, point))
  const take = (index: number) => {
    const point = allPoints(entry).find((one) => one.index === index)?.point
    if (point === undefined) return
    setInHand(index)
    crossTo(point)
  }
  const move = (by: PicturePoint, coarse: boolean) => {
    const step = coarse ? Math.max(2, Math.round(Math.min(width, height) * sight.perPx * COARSE)) : 1
    const to = inPicture({ x: cross.x + by.x * step, y: cross.y + by.y * step }, size)
    crossTo(to)
    if (inHand !== null) put(inHand, to)
  }
  const act = (asked: PadAct) => {
    if (asked.act === 'move') move(asked.by, asked.coarse)
    else if (asked.act === 'take') take(asked.index)
    else if (asked.act === 'let go') setInHand(null)
    else if (asked.act === 'whole') setSeen(null)
    else if (asked.act === 'zoom') crossTo(cross, zoomed(sight, asked.factor, cross, whole))
    else if (asked.act === 'take back') {
      setInHand(null)
      set(withoutLast(entry))
    } else if (inHand !== null) setInHand(null)
    else {
      const next = nextPoint(entry)
      if (next !== null) put(next, cross)
    }
  }
  return {
    sight,
    cross,
    inHand,
    act,
    take,
    press: (at) => {
      const point = place(at)
      setCross(point)
      const next = nextPoint(entry)
      if (next === null) return
      put(next, point)
      setInHand(next)
    },
    drag: (at) => {
      if (inHand === null) return
      const point = place(at)
      setCross(point)
      put(inHand, point)
    },
  }
}
