import { describe, expect, it } from 'vitest'
import type { PlanSheetFile, PlanViewFile } from '../../electron/figures/plan-sheet-file.ts'
import { drawnBody } from '../../electron/figures/plan-sheets.ts'
import { dimensionsOf } from '../../electron/sheets/dimension-list.ts'
import type { PlanPanel } from '../../shared-types/figure.ts'
import { faultsOf as innerFaultsOf } from './body-trays/sheet-checks.ts'
import { faultsOf, unnamedSeams } from './plan-checks.ts'
import { sedge } from './sedge.ts'

const { sheets } = drawnBody('coupe', dimensionsOf('coupe', {}), sedge)
const sheetOf = (id: PlanSheetFile['id']): PlanSheetFile => {
  const sheet = sheets.find((one) => one.id === id)
  if (!sheet) throw new Error(`No sheet ${id}`)
  return sheet
}
const { views } = sheetOf('outside')

type Change = (view: PlanViewFile) => PlanViewFile
const changed = (id: string, change: Change): PlanViewFile[] =>
  views.map((view) => (view.id === id ? change(view) : view))
const changedPanel =
  (panelId: string, change: (panel: PlanPanel) => PlanPanel): Change =>
  (view) => ({ ...view, panels: view.panels.map((panel) => (panel.panelId === panelId ? change(panel) : panel)) })
const outlined = (change: (outline: string) => string) => (panel: PlanPanel) => ({
  ...panel,
  outline: change(panel.outline),
})

/** Moves the first figure of an outline that belongs to a control point, by so many millimetres. */
const bent = (byMm: number) => (outline: string) =>
  outline.replace(/C(-?[\d.]+)/, (_, figure: string) => `C${(Number(figure) + byMm).toFixed(3)}`)
const unclosed = (outline: string) => outline.replace(/[LC][^LC]*Z$/, '')
const turned = (outline: string) => {
  const points = [...outline.matchAll(/(-?[\d.]+) (-?[\d.]+)(?=[LCZ]|$)/g)].map(([point]) => point).reverse()
  return `M${points.join('L')}Z`
}
/** Two corners far apart change places, so that the line must cross itself. */
const knotted = (outline: string) => {
  const corners = [...outline.matchAll(/[LC][^LCZ]*/g)].map(([piece]) => piece)
  const [one, other] = [1, Math.floor(corners.length / 2)]
  const swapped = corners.map((piece, index) => corners[index === one ? other : index === other ? one : index] ?? piece)
  return `${outline.slice(0, outline.search(/[LC]/))}${swapped.join('')}Z`
}

describe('a fault planted in the outside is found', () => {
  it.each<readonly [string, string, PlanViewFile[]]>([
    [
      'an edge one micrometre off',
      'edges are not shared by exactly two',
      changed('left', changedPanel('front-door.L', outlined(bent(0.001)))),
    ],
    [
      'a panel left out',
      'panels do not fill the silhouette',
      changed('left', (view) => ({ ...view, panels: view.panels.slice(1) })),
    ],
    [
      'a panel drawn twice',
      'a panel has two outlines',
      changed('left', (view) => ({ ...view, panels: [...view.panels, ...view.panels.slice(0, 1)] })),
    ],
    [
      'an outline left open',
      'front-door.L is not closed',
      changed('left', changedPanel('front-door.L', outlined(unclosed))),
    ],
    [
      'an outline against the clock',
      'front-door.L runs the wrong way',
      changed('left', changedPanel('front-door.L', outlined(turned))),
    ],
    [
      'an outline that crosses itself',
      'front-lid crosses itself',
      changed('roof', changedPanel('front-lid', outlined(knotted))),
    ],
    [
      'a label outside',
      'roof-skin has its label outside',
      changed(
        'roof',
        changedPanel('roof-skin', (panel) => ({ ...panel, label: { u: -500, v: 0 } })),
      ),
    ],
    [
      'a flap outside its wing',
      'fuel-filler-flap.R is not within',
      changed(
        'right',
        changedPanel(
          'fuel-filler-flap.R',
          outlined((outline) => outline.replace(/M[\d.]+/, 'M0')),
        ),
      ),
    ],
    [
      'sides that differ by a micrometre',
      'right front-door.L',
      changed('right', changedPanel('front-door.R', outlined(bent(0.001)))),
    ],
    [
      'a half that is no mirror image',
      'roof front-side.L',
      changed('roof', changedPanel('front-side.L', outlined(bent(0.001)))),
    ],
    [
      'a corner elsewhere in another view',
      'corners stand elsewhere in another view',
      changed(
        'left',
        changedPanel(
          'lamp-housing.L',
          outlined((outline) => outline.replace(/M(-?[\d.]+)/, (_, u: string) => `M${(Number(u) + 0.01).toFixed(3)}`)),
        ),
      ),
    ],
  ])('%s', (_what, said, broken) => {
    expect(faultsOf(broken).join('\n')).toContain(said)
  })

  it('neighbours whose joint has no name', () => {
    const [door, wing] = ['front-door.L', 'nose-panel']
    const broken = changed(
      'left',
      changedPanel(door ?? '', (panel) => ({ ...panel, panelId: wing ?? '' })),
    )
    expect(unnamedSeams('coupe', views)).toEqual([])
    expect(unnamedSeams('coupe', broken)).not.toEqual([])
  })
})

describe('a fault planted in an inner sheet is found', () => {
  const broken = (id: PlanSheetFile['id'], change: Change): string => {
    const sheet = sheetOf(id)
    return innerFaultsOf({ ...sheet, views: sheet.views.map(change) }).join('\n')
  }
  const onFloor = (change: (panel: PlanPanel) => PlanPanel) => broken('floor', changedPanel('front-floor.L', change))

  it.each<readonly [string, string, () => string]>([
    ['an edge one micrometre off', 'edges are not shared by exactly two', () => onFloor(outlined(bent(0.001)))],
    ['a side that is no mirror image', 'do not mirror', () => onFloor(outlined(bent(0.001)))],
    [
      'a panel left out',
      'tiles miss the silhouette',
      () => broken('floor', (view) => ({ ...view, panels: view.panels.slice(2) })),
    ],
    [
      'a panel drawn twice',
      'a panel is drawn twice',
      () => broken('floor', (view) => ({ ...view, panels: [...view.panels, ...view.panels.slice(0, 1)] })),
    ],
    ['an outline against the clock', 'does not run clockwise', () => onFloor(outlined(turned))],
    ['an outline that crosses itself', 'crosses itself', () => onFloor(outlined(knotted))],
    ['a label outside', 'label not well inside', () => onFloor((panel) => ({ ...panel, label: { u: -900, v: 0 } }))],
    ['a panel without area', 'has no area', () => onFloor((panel) => ({ ...panel, areaMm2: 0 }))],
    [
      'an outline beyond the sheet',
      'leaves the box',
      () => broken('floor', (view) => ({ ...view, box: { ...view.box, width: 100 } })),
    ],
    [
      'a silhouette that crosses itself',
      'silhouette crosses itself',
      () => broken('floor', (view) => ({ ...view, silhouette: knotted(view.silhouette) })),
    ],
    [
      'loose pieces on one another',
      'overlaps',
      () =>
        broken('openings', ({ panels, ...view }) => ({
          ...view,
          panels: panels.map((panel, index) => (index === 1 ? { ...panel, outline: panels[0]?.outline ?? '' } : panel)),
        })),
    ],
    [
      'a piece of the underside outside the car',
      'lies outside the silhouette',
      () =>
        broken('under', ({ panels, ...view }) => ({
          ...view,
          panels: panels.map((panel, index) =>
            index === 0 ? { ...panel, outline: 'M-900 0L-800 0L-800 100Z' } : panel,
          ),
        })),
    ],
  ])('%s', (_what, said, found) => {
    expect(found()).toContain(said)
  })

  it('a piece that does not lie in the one it is set in', () => {
    const holder = sheets.flatMap((sheet) =>
      sheet.id === 'outside' ? [] : sheet.views.filter(({ set }) => set.length > 0).map(() => sheet.id),
    )
    const [id] = holder
    if (id === undefined) throw new Error('No inner sheet has a piece within another.')
    const said = broken(id, ({ panels, ...view }) => ({
      ...view,
      panels: panels.map((panel) =>
        panel.panelId === view.set[0]?.panelId ? { ...panel, outline: 'M-900 0L-800 0L-800 100Z' } : panel,
      ),
    }))
    expect(said).toContain('does not lie in')
  })
})
