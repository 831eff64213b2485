import type { ReadingGrid } from '../../../shared-types/coating-import.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { PanelDrawing } from '../../drawing/PanelDrawing.tsx'
import { planAsked } from '../../store/plan-asked.ts'
import { useAnswer } from '../../store/use-answer.ts'

interface GridPictureProps {
  readonly record: RecordView
  readonly panelId: string
  readonly grid: ReadingGrid
  /** Number of the next place in the grid; -1 when none is left. */
  readonly next: number
  readonly words: string
}

/** The panel with the places read so far, and a cross where the gauge goes next. */
export function GridPicture({ record, panelId, grid, next, words }: GridPictureProps) {
  const { value: plan } = useAnswer('figures.plan', planAsked(record))
  const view = plan?.sheets.flatMap(({ views }) => views).find(({ id }) => id === grid.view)
  const panel = view?.panels.find((own) => own.panelId === panelId)
  if (view === undefined || panel === undefined) return null
  const read = grid.places.filter(({ spot }) => spot !== null)
  return (
    <PanelDrawing
      view={view}
      panel={panel}
      extents={[]}
      spots={read.map(({ at, spot }) => ({ letter: `${spot}`, at, figure: '' }))}
      cursor={grid.places[next]?.at ?? null}
      label={words}
    />
  )
}
