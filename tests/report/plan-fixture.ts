import type { PlanFigure, PlanMarks, PlanView } from '../../shared-types/figure.ts'
import type { PanelDefinition } from '../../shared-types/panel.ts'
import { panelName } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'

const box = (u: number, v: number, width: number, height: number): string =>
  `M${u} ${v}L${u + width} ${v}L${u + width} ${v + height}L${u} ${v + height}Z`

const flank = (id: 'left' | 'right', side: 'L' | 'R', y: number): PlanView => ({
  id,
  name: id === 'left' ? 'Left side' : 'Right side',
  box: { u: 0, v: -1350, width: 4250, height: 1350 },
  at: { x: 200, y },
  panels: [
    { panelId: `front-side.${side}`, outline: box(100, -850, 1300, 600), label: { u: 700, v: -600 }, areaMm2: 780000 },
    {
      panelId: `front-door.${side}`,
      outline: box(1450, -850, 1150, 600),
      label: { u: 2000, v: -600 },
      areaMm2: 690000,
    },
    { panelId: `rear-side.${side}`, outline: box(2650, -850, 1400, 600), label: { u: 3300, v: -600 }, areaMm2: 840000 },
  ],
  ink: [
    {
      weight: 'detail',
      path: 'M1400 -860C1700 -1300 2000 -1340 2300 -1340C2800 -1340 3100 -1100 3400 -860',
      occlude: false,
    },
    { weight: 'form', path: 'M120 -700C1500 -760 2800 -760 4000 -700', occlude: false },
    { weight: 'silhouette', path: box(600, -330, 640, 320), occlude: true },
  ],
  silhouette:
    'M50 -260C60 -700 300 -860 1400 -870C1700 -1340 2000 -1350 2300 -1350C2800 -1350 3100 -1110 3450 -880C3900 -830 4180 -700 4200 -260Z',
})

/** A body of a few boxes: enough to test drawing by, no car. */
export const planFixture: PlanFigure = {
  body: 'coupe',
  title: 'Body plan for tests',
  dimensions: { lengthMm: 4250, wheelbaseMm: 2500, widthMm: 1600, heightMm: 1350 },
  textAlternative: 'A plain body of few panels.',
  sheets: [
    {
      id: 'outside',
      name: 'Outside',
      widthMm: 4700,
      heightMm: 4000,
      views: [
        flank('left', 'L', 300),
        {
          id: 'roof',
          name: 'From above',
          box: { u: 0, v: -800, width: 4250, height: 1600 },
          at: { x: 200, y: 1900 },
          panels: [
            { panelId: 'front-lid', outline: box(300, -500, 1000, 1000), label: { u: 800, v: 0 }, areaMm2: 1000000 },
            { panelId: 'roof-skin', outline: box(1900, -500, 1100, 1000), label: { u: 2400, v: 0 }, areaMm2: 1100000 },
          ],
          ink: [],
          silhouette: 'M50 -700C500 -800 3800 -800 4200 -700L4200 700C3800 800 500 800 50 700Z',
        },
      ],
    },
    {
      id: 'under',
      name: 'Underneath',
      widthMm: 4700,
      heightMm: 2200,
      views: [flank('right', 'R', 300)],
    },
  ],
}

/** Marks of one sheet as the plan's owner would make them, from the record alone. */
export function marksFixture(record: RecordView, panels: readonly PanelDefinition[], sheetId: string): PlanMarks {
  const sheet = planFixture.sheets.find(({ id }) => id === sheetId)
  const drawn = (sheet?.views ?? []).flatMap((view) => view.panels.map((panel) => ({ view, panel })))
  const rows = drawn.flatMap(({ view, panel }) => {
    const definition = panels.find(({ id }) => id === panel.panelId)
    const state = record.panels.find(({ panelId }) => panelId === panel.panelId)
    return definition === undefined ? [] : [{ view, panel, definition, state }]
  })
  return {
    panels: rows.map(({ definition, state }) => ({
      panelId: definition.id,
      stop: definition.stop,
      name: panelName(definition, record.commission.names),
      inspection: state?.inspection ?? 'not inspected',
      metal: state?.metal ?? 'not inspected',
      paint: state?.paint ?? 'not inspected',
      hatch:
        state?.metal === 'replacement panel'
          ? 'replacement'
          : state?.metal === 'filler over metal'
            ? 'filler-over'
            : 'clean',
      edge: state?.inspection === 'inspected' ? 'solid' : 'dotted',
      crossed: state?.inspection === 'not accessible',
      word: state?.metal ?? 'not inspected',
    })),
    extents: record.findings.flatMap((finding) =>
      finding.extent === null
        ? []
        : [{ finding: finding.number, panelId: finding.panelId, hatch: 'filler-through' as const, ...finding.extent }],
    ),
    callouts: rows.map(({ view, panel, definition }) => {
      const at = {
        x: view.at.x + panel.label.u - view.box.u,
        y: view.at.y + panel.label.v - view.box.v,
      }
      return {
        figure: String(definition.stop),
        panelId: definition.id,
        view: view.id,
        ring: { x: at.x, y: view.at.y + view.box.height + 140 },
        leader: [at],
        name: '',
        word: '',
        textSide: 'right' as const,
      }
    }),
    places: [],
    captions: (sheet?.views ?? []).map((view) => ({
      view: view.id,
      text: view.name,
      at: { x: view.at.x, y: view.at.y - 50 },
    })),
    table: rows.map(({ definition, state }) => ({
      stop: definition.stop,
      panelId: definition.id,
      name: panelName(definition, record.commission.names),
      layer: definition.layer,
      inspection: state?.inspection ?? 'not inspected',
      metal: state?.metal ?? 'not inspected',
      paint: state?.paint ?? 'not inspected',
      findings: [],
      exhibits: [],
    })),
    legend: [
      { hatch: 'clean', edge: 'solid', crossed: false, word: 'original metal' },
      { hatch: 'replacement', edge: 'solid', crossed: false, word: 'replacement panel' },
      { hatch: 'filler-over', edge: 'solid', crossed: false, word: 'filler over metal' },
      { hatch: 'clean', edge: 'dotted', crossed: false, word: 'not inspected' },
      { hatch: 'clean', edge: 'dotted', crossed: true, word: 'not accessible' },
    ],
  }
}
