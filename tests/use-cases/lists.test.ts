import { describe, expect, it } from 'vitest'
import { cautions } from '../../electron/sheets/cautions.ts'
import { bodyAreaOf, panelConditions, panelList } from '../../electron/sheets/panel-list.ts'
import { partDefinition, partGroups, partsList, partsOfEveryCar } from '../../electron/sheets/parts-list.ts'
import { panelName, textWithPanelNames } from '../../shared-types/panel.ts'
import { bodyStyle } from '../../shared-types/words.ts'

const everything = Object.keys(panelConditions())
const coupe = (level: Parameters<typeof panelList>[1], conditions: readonly string[] = ['pillared']) =>
  panelList('coupe', level, conditions).panels

describe.each(bodyStyle.options)('panels of a %s', (body) => {
  const { panels } = panelList(body, 'with underneath', everything)

  it('are walked in order, each once, and both sides of a pair are there', () => {
    expect(panels.map((panel) => panel.stop)).toEqual(panels.map((_, at) => at + 1))
    expect(new Set(panels.map((panel) => panel.id)).size).toBe(panels.length)
    for (const panel of panels.filter((one) => one.side === 'L')) {
      expect(panels.some((one) => one.id === panel.id.replace('.L', '.R'))).toBe(true)
    }
    expect(panels.map((panel) => panel.phase)).toEqual(panels.map((panel) => panel.phase).toSorted())
  })

  it('have names of their own in both Englishes, an area of the body and no brace left in a text', () => {
    for (const names of ['uk', 'us'] as const) {
      expect(new Set(panels.map((panel) => panelName(panel, names))).size).toBe(panels.length)
      for (const panel of panels) {
        expect(textWithPanelNames(`${panel.access} ${panel.look}`, panels, names)).not.toMatch(/[{}]/)
      }
    }
    for (const panel of panels) expect(bodyAreaOf(panel.id)).toBeTruthy()
  })
})

describe('the walk', () => {
  it.each([
    ['outside only', [1]],
    ['with openings', [1, 2]],
    ['with inside', [1, 2, 3]],
    ['with underneath', [1, 2, 3, 4]],
  ] as const)('%s goes through phases %j', (level, phases) => {
    const walked = coupe(level).filter((panel) => panel.walked)
    expect([...new Set(walked.map((panel) => panel.phase))]).toEqual(phases)
  })

  it('leaves out panels whose condition does not hold, on one side or both', () => {
    const ids = (conditions: readonly string[]) => coupe('outside only', conditions).map((panel) => panel.id)
    expect(ids([])).not.toContain('sunroof-panel')
    expect(ids(['sunroof'])).toContain('sunroof-panel')
    expect(ids(['filler-flap.L']).filter((id) => id.startsWith('fuel-filler-flap'))).toEqual(['fuel-filler-flap.L'])
    expect(ids(['filler-flap']).filter((id) => id.startsWith('fuel-filler-flap'))).toHaveLength(2)
  })

  it('sets outer, inner and under by phase', () => {
    for (const panel of coupe('with underneath')) {
      expect(panel.layer).toBe(panel.phase === 1 ? 'outer' : panel.phase === 4 ? 'under' : 'inner')
    }
  })
})

it('names a panel with its side in sentence case', () => {
  const wing = coupe('outside only').find((panel) => panel.id === 'front-side.L')
  const post = coupe('outside only').find((panel) => panel.id === 'front-post-upper.R')
  expect(wing && [panelName(wing, 'uk'), panelName(wing, 'us')]).toEqual(['Left front wing', 'Left front fender'])
  expect(post && panelName(post, 'uk')).toBe('Right A-post, upper')
})

describe('parts', () => {
  it('are found with and without side or number', () => {
    expect(partDefinition('wheels.3')?.id).toBe('wheels')
    expect(partDefinition('headlamps.L')?.id).toBe('headlamps')
    expect(partDefinition('wing')).toBeUndefined()
  })

  it('each belong to a named group, and a convertible alone has a folding roof', () => {
    for (const part of partsList()) expect(partGroups()[part.group]).toBeTruthy()
    const ids = (body: 'coupe' | 'convertible') => partsOfEveryCar(body).map((part) => part.id)
    expect(ids('convertible')).toContain('folding-roof-cloth')
    expect(ids('coupe')).not.toContain('folding-roof-cloth')
    expect(ids('coupe')).not.toContain('service-invoices')
  })
})

it.each([
  'asbestos',
  'stand',
  'petrol',
  'lead',
  'isocyanates',
  'battery',
  'torn sheet',
  'glass',
  'springs',
  'droppings',
  'radium',
  'air bags',
])('a caution about %s names its source and the step that raises it', (word) => {
  const about = cautions().filter((caution) => caution.text.toLowerCase().includes(word))
  expect(about.length).toBeGreaterThan(0)
  for (const caution of about) {
    expect(caution.source).not.toBe('')
    expect(caution.raisedBy.length).toBeGreaterThan(0)
  }
})
