import { describe, expect, it } from 'vitest'
import { panelList } from '../../electron/sheets/panel-list.ts'
import {
  coverageOf,
  panelsTyped,
  stateOfPanel,
  stopBeside,
  walkedStops,
} from '../../renderer/places/walk-round/walking.ts'

const { panels } = panelList('coupe', 'with openings', [])
const stops = walkedStops(panels)

describe('walking', () => {
  it('goes stop by stop through the walked panels, forward and back, and stays at the ends', () => {
    const first = stops[0]?.id ?? ''
    const last = stops.at(-1)?.id ?? ''
    expect(stopBeside(panels, null, 1)?.id).toBe(first)
    expect(stopBeside(panels, first, -1)?.id).toBe(first)
    expect(stopBeside(panels, last, 1)?.id).toBe(last)
    let here = first
    const met = [here]
    while (here !== last) {
      here = stopBeside(panels, here, 1)?.id ?? last
      met.push(here)
    }
    expect(met).toEqual(stops.map(({ id }) => id))
    expect(stopBeside(panels, stops[4]?.id ?? '', -1)?.id).toBe(stops[3]?.id)
  })

  it('comes back into the walk from a panel that the level of inspection leaves out', () => {
    const beyond = panels.find((panel) => !panel.walked)
    expect(beyond).toBeDefined()
    expect(stopBeside(panels, beyond?.id ?? '', -1)?.walked).toBe(true)
  })

  it('counts only panels that were looked at as seen; a panel without a row and one out of reach never count', () => {
    const [one, two] = [stops[0]?.id ?? '', stops[1]?.id ?? '']
    const states = [
      { ...stateOfPanel([], one), inspection: 'inspected' as const },
      { ...stateOfPanel([], two), inspection: 'not accessible' as const, reason: 'behind a wall' },
    ]
    const outer = coverageOf(panels, states).find(({ layer }) => layer === 'outer')
    expect(outer).toMatchObject({ seen: 1, notAccessible: 1 })
    expect(coverageOf(panels, states).reduce((sum, { all }) => sum + all, 0)).toBe(panels.length)
  })

  it('finds a panel by its number and by the beginnings of the words of its name, in either English', () => {
    expect(panelsTyped(panels, 'uk', '3')[0]?.stop).toBe(3)
    expect(panelsTyped(panels, 'uk', 'left front w')[0]?.id).toBe('front-side.L')
    expect(panelsTyped(panels, 'us', 'left front f')[0]?.id).toBe('front-side.L')
    expect(panelsTyped(panels, 'uk', 'no such thing')).toEqual([])
  })
})
