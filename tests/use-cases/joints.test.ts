import { describe, expect, it } from 'vitest'
import { jointBetween, jointList, jointName } from '../../electron/sheets/joint-list.ts'
import { panelConditions, panelList } from '../../electron/sheets/panel-list.ts'
import { bodyStyle, jointKind } from '../../shared-types/words.ts'

/** Which of the two panels have sides, those without first. */
const sidedPanels = { same: [true, true], across: [true, true], each: [false, true], centre: [false, false] }
const gaps: readonly string[] = ['hinge-gap', 'shut-gap', 'clearance-gap']

describe.each(bodyStyle.options)('joints of a %s', (body) => {
  const { panels } = panelList(body, 'with underneath', Object.keys(panelConditions()))
  const ids = panels.map(({ id }) => id)
  const joints = jointList(body)

  it('name panels this body has, with the sides they have', () => {
    for (const { panels: pair, side } of joints) {
      const sided = pair.map((base) => {
        expect(ids.some((id) => id === base || id === `${base}.L`)).toBe(true)
        return ids.includes(`${base}.L`)
      })
      expect(sided.toSorted()).toEqual(sidedPanels[side])
    }
  })

  it('are the same from either panel, and each occurs between two panels of this body', () => {
    const met = new Set<string>()
    for (const [at, one] of ids.entries()) {
      for (const other of ids.slice(at + 1)) {
        const joint = jointBetween(one, other, body)
        expect(jointBetween(other, one, body)).toBe(joint)
        if (joint !== null) met.add(joint.id)
      }
    }
    expect([...met].sort()).toEqual(joints.map(({ id }) => id).sort())
  })

  it('leave no panel without a neighbour', () => {
    const alone = ids.filter((one) => ids.every((other) => one === other || jointBetween(one, other, body) === null))
    expect(alone).toEqual([])
  })

  it('mirror: what meets on the left meets on the right', () => {
    const mirrored = (id: string) => id.replace(/[LR]$/, (side) => (side === 'L' ? 'R' : 'L'))
    for (const one of ids) {
      for (const other of ids) {
        expect(jointBetween(mirrored(one), mirrored(other), body)).toBe(jointBetween(one, other, body))
      }
    }
  })

  it('have stations where they are gaps, and none where they are seams; the usual kind is not among the others', () => {
    for (const { kind, mayBe, measureAt, id } of joints) {
      expect([id, measureAt !== null]).toEqual([id, gaps.includes(kind)])
      expect(new Set([kind, ...mayBe]).size).toBe(mayBe.length + 1)
      for (const one of [kind, ...mayBe]) expect(jointKind.options).toContain(one)
    }
  })
})

describe('a seam', () => {
  it('is named in the chosen English, with the panels as they are called on that body', () => {
    expect(jointName('front-door.L', 'front-side.L', 'saloon4', 'uk')).toBe(
      'shut line between left front door and left front wing',
    )
    expect(jointName('front-side.R', 'front-door.R', 'saloon4', 'us')).toBe(
      'gap between right front fender and right front door',
    )
    expect(jointName('lower-rail-outer.L', 'rear-side.L', 'coupe', 'uk')).toBe(
      'leaded seam between left sill, outer and left rear wing',
    )
    expect(jointName('roof-skin', 'rear-glass-surround', 'coupe', 'uk')).toMatch(
      /^spot-welded flange between roof panel/,
    )
  })

  it('is not there across the car, across bodies, or between panels that do not meet', () => {
    expect(jointBetween('front-door.L', 'front-side.R', 'coupe')).toBeNull()
    expect(jointBetween('front-door.L', 'rear-door.L', 'coupe')).toBeNull()
    expect(jointBetween('front-door.L', 'rear-door.L', 'saloon4')?.kind).toBe('shut-gap')
    expect(jointBetween('front-lid', 'rear-lid', 'coupe')).toBeNull()
    expect(jointName('front-lid', 'rear-lid', 'coupe', 'uk')).toBeNull()
    expect(jointBetween('rear-cargo-door.L', 'rear-cargo-door.R', 'van')?.side).toBe('across')
    expect(jointBetween('rear-cargo-door.L', 'rear-cargo-door.L', 'van')).toBeNull()
  })
})
