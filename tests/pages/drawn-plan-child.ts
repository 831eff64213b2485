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

/** What the benchmark changes, one kind after another. `rest` is a zoom that nothing follows. */
export type RedrawKind = 'state' | 'inHand' | 'move' | 'map' | 'rest'

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

/** Ends the task under way, so that what was done before is no part of what is timed next. */
const apart = () => new Promise<void>((done) => setTimeout(done))

/** Long enough for a gesture to be taken for ended and for every layer to be drawn anew, ms. */
const WATCHED_MS = 500

/**
 * Makes a change in a frame, or just before it where the drawing waits for the frame itself, and marks in the browser's
 * own record from where until where its work reaches. Answers the time by the clock from the start of the frame until
 * after it was painted, ms.
 */
async function watched(kind: RedrawKind, change: () => void): Promise<number> {
  await apart()
  performance.mark(`${kind} begins`)
  await apart()
  const time = await new Promise<number>((done) => {
    let began = 0
    requestAnimationFrame(() => {
      began = performance.now()
      if (kind !== 'move' && kind !== 'rest') flushSync(change)
    })
    if (kind === 'move' || kind === 'rest') change()
    requestAnimationFrame(() => afterPaint(() => done(performance.now() - began)))
  })
  if (kind === 'rest') await new Promise((done) => setTimeout(done, WATCHED_MS))
  performance.mark(`${kind} ends`)
  return time
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
    panels: shown.now().marks.panels.map((mark, index) =>
      index === round % Math.max(1, panels.length)
        ? {
            ...mark,
            hatch: mark.hatch === 'repaired' ? 'replacement' : 'repaired',
            edge: 'solid',
          }
        : mark,
    ),
  })
  const thicker = (map: PanelMap, by: number): PanelMap => ({
    ...map,
    grid: {
      ...map.grid,
      values: map.grid.values.map((value) => (value === null ? null : value + by)),
    },
  })
  const lookIn = (round: number): PlanLook => ({
    zoom: 2 + Math.sin(round / 7),
    middle: {
      x: plan.sheet.widthMm / 2 + 40 * round,
      y: plan.sheet.heightMm / 2 + 25 * Math.sin(round),
    },
  })
  /** One change of each kind, by the number of the round. */
  const changes: Readonly<Record<RedrawKind, (round: number) => void>> = {
    state: (round) => shown.set({ ...shown.now(), marks: changed(round) }),
    inHand: (round) =>
      shown.set({
        ...shown.now(),
        inHand: panels[(round * 7) % Math.max(1, panels.length)]?.panelId ?? null,
      }),
    move: (round) => look.set(lookIn(round)),
    map: (round) =>
      shown.set({
        ...shown.now(),
        maps: plan.maps.map((map) => thicker(map, round * 9)),
      }),
    rest: (round) => look.set(lookIn(round)),
  }
  const measureRedraws = async (kind: RedrawKind, rounds: number): Promise<number[]> => {
    const times: number[] = []
    for (let round = 0; round < rounds; round++) times.push(await watched(kind, () => changes[kind](round)))
    look.set(wholeSheet)
    await new Promise((done) => setTimeout(done, 2 * WATCHED_MS))
    return times
  }
  /** Time from picture to picture while every frame moves the plan, ms. */
  const measureMoving = async (rounds: number): Promise<number[]> => {
    const times: number[] = []
    let before = await nextFrame()
    for (let round = 0; round < rounds; round++) {
      look.set(lookIn(round))
      const now = await nextFrame()
      times.push(now - before)
      before = now
    }
    look.set(wholeSheet)
    return times
  }
  Object.assign(window, { measureRedraws, measureMoving })
}

void draw()
