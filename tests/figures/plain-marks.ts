import type { PanelMark, PlanMarks, PlanView } from '../../shared-types/figure.ts'

/** Every panel looked at and clean: the bare drawing. */
export const plainMarks = ({ views }: { readonly views: readonly Pick<PlanView, 'panels'>[] }): PlanMarks => ({
  panels: views.flatMap(({ panels }) =>
    panels.map(
      ({ panelId }, index): PanelMark => ({
        panelId,
        stop: index + 1,
        name: panelId,
        inspection: 'inspected',
        metal: 'original metal',
        paint: 'factory finish',
        hatch: 'clean',
        edge: 'solid',
        crossed: false,
        word: '',
      }),
    ),
  ),
  extents: [],
  callouts: [],
  places: [],
  captions: [],
  table: [],
  legend: [],
})
