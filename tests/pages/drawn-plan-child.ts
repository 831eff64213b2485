import { createElement, useSyncExternalStore } from 'react'
import { flushSync } from 'react-dom'
import { createRoot } from 'react-dom/client'
import type { PanelMap } from '../../renderer/drawing/MapCells.tsx'
import { PlanDrawing } from '../../renderer/drawing/PlanDrawing.tsx'
import { type PlanLook, wholeSheet } from '../../renderer/drawing/plan-scale.ts'
import { applyTokens } from '../../renderer/look/apply-tokens.ts'
import type { PlanFigure, PlanMarks, PlanSheet } from '../../shared-types/figure.ts'
import '../../renderer/look/page.css'
import '../../renderer/look/plan.css'

/** What the page draws; handed over by the benchmark. */
export interface DrawnPlan {
  readonly figure: PlanFigure
  readonly sheet: PlanSheet
  readonly marks: PlanMarks
  readonly maps: readonly PanelMap[]
  /** Size of the drawing, px. */
  readonly room: { readonly width: number; readonly height: number }
}

/** Changes the benchmark asks for, in milliseconds each: from the start of the frame to after it was painted. */
export interface RedrawTimes {
  readonly state: number[]
  readonly inHand: number[]
  /** Within a gesture: the finished picture is carried along. */
  readonly move: number[]
  readonly map: number[]
  /** Longest of the frames after a zoom, until everything is drawn in its right weights. */
  atRest: number[]
  /** Time from picture to picture while every frame moves the plan. */
  readonly between: number[]
}

interface Shown extends DrawnPlan {
  readonly inHand: string | null
}

interface Kept<State> {
  now(): State
  set(next: State): void
  subscribe(hear: () => void): () => void
}

function keep<State>(first: State): Kept<State> {
  let now = first
  const hearers = new Set<() => void>()
  return {
    now: () => now,
    set(next: State) {
      now = next
      for (const hear of hearers) hear()
    },
    subscribe(hear: () => void) {
      hearers.add(hear)
      return () => hearers.delete(hear)
    },
  }
}

const nameOf = (panelId: string) => panelId
const ignore = () => undefined

/** The drawing alone, with nothing of the program about it. */
function Page({ shown, look }: { readonly shown: Kept<Shown>; readonly look: Kept<PlanLook> }) {
  const { inHand, room, ...drawn } = useSyncExternalStore(shown.subscribe, shown.now)
  const place = { ...room, inches: false, nameOf, onChoose: ignore, look }
  return createElement(PlanDrawing, { ...drawn, ...place, inHand })
}

const nextFrame = () => new Promise<number>((done) => requestAnimationFrame(done))
const afterPaint = (done: () => void) => {
  const painted = new MessageChannel()
  painted.port1.onmessage = done
  painted.port2.postMessage(null)
}

/** Time of one frame in which a change is made: `within` it, or just before it where the drawing waits for it itself. */
function frameOf(change: () => void, within: boolean): Promise<number> {
  return new Promise((done) => {
    let began = 0
    requestAnimationFrame(() => {
      began = performance.now()
      if (within) flushSync(change)
    })
    if (!within) change()
    requestAnimationFrame(() => afterPaint(() => done(performance.now() - began)))
  })
}

/** Long enough for a gesture to be taken for ended and for every layer to be drawn anew, ms. */
const WATCHED_MS = 600

/** Time of the longest of the frames after a change, each from its start until after it was painted. */
function longestFrame(change: () => void): Promise<number> {
  return new Promise((done) => {
    const until = performance.now() + WATCHED_MS
    let longest = 0
    const frame = () => {
      const began = performance.now()
      // Asked for before anything else asks, so that the next frame is timed from its start too.
      if (began < until) requestAnimationFrame(frame)
      afterPaint(() => {
        longest = Math.max(longest, performance.now() - began)
        if (began >= until) done(longest)
      })
    }
    requestAnimationFrame(frame)
    change()
  })
}

/** Draws the plan and offers `measureRedraws` to the benchmark. */
async function draw(): Promise<void> {
  applyTokens('paper')
  const plan = (await (await fetch('/plan.json')).json()) as DrawnPlan
  const shown = keep<Shown>({ ...plan, inHand: null })
  const look = keep<PlanLook>(wholeSheet)
  const element = document.getElementById('root')
  if (element === null) throw new Error('no place to draw in')
  createRoot(element).render(createElement(Page, { shown, look }))
  await nextFrame()
  await nextFrame()

  const { panels } = plan.marks
  const changed = (round: number): PlanMarks => ({
    ...shown.now().marks,
    panels: shown
      .now()
      .marks.panels.map((mark, index) =>
        index === round % Math.max(1, panels.length)
          ? { ...mark, hatch: mark.hatch === 'repaired' ? 'replacement' : 'repaired', edge: 'solid' }
          : mark,
      ),
  })
  const thicker = (map: PanelMap, by: number): PanelMap => ({
    ...map,
    grid: { ...map.grid, values: map.grid.values.map((value) => (value === null ? null : value + by)) },
  })
  const lookIn = (round: number): PlanLook => ({
    zoom: 2 + Math.sin(round / 7),
    middle: { x: plan.sheet.widthMm / 2 + 40 * round, y: plan.sheet.heightMm / 2 + 25 * Math.sin(round) },
  })
  /** One change of each kind, by the number of the round. */
  const changes = {
    state: (round: number) => shown.set({ ...shown.now(), marks: changed(round) }),
    inHand: (round: number) =>
      shown.set({ ...shown.now(), inHand: panels[(round * 7) % Math.max(1, panels.length)]?.panelId ?? null }),
    move: (round: number) => look.set(lookIn(round)),
    map: (round: number) => shown.set({ ...shown.now(), maps: plan.maps.map((map) => thicker(map, round * 9)) }),
  }
  const measureOne = async (kind: keyof typeof changes, rounds: number): Promise<number[]> => {
    const times: number[] = []
    for (let round = 0; round < rounds; round++) {
      times.push(await frameOf(() => changes[kind](round), kind !== 'move'))
    }
    return times
  }
  const measureRedraws = async (rounds: number): Promise<RedrawTimes> => {
    const times: RedrawTimes = {
      state: await measureOne('state', rounds),
      inHand: await measureOne('inHand', rounds),
      move: await measureOne('move', rounds),
      map: await measureOne('map', rounds),
      atRest: [],
      between: [],
    }
    for (let round = 0; round < rounds / 2; round++)
      times.atRest.push(await longestFrame(() => look.set(lookIn(round))))
    let before = await nextFrame()
    for (let round = 0; round < rounds * 2; round++) {
      look.set(lookIn(round))
      const now = await nextFrame()
      times.between.push(now - before)
      before = now
    }
    look.set(wholeSheet)
    return times
  }
  Object.assign(window, { measureRedraws, measureOne })
}

void draw()
