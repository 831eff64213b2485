import { memo, useMemo } from 'react'
import { levelColour, levelPaths, type MapGrid } from './map-levels.ts'

/** A map of one panel in one view: the grid, the limits between its flat bands, and the outline it is cut to. */
export interface PanelMap {
  readonly view: string
  readonly panelId: string
  readonly outline: string
  readonly grid: MapGrid
  readonly limits: readonly number[]
}

/** Map of a panel under the ink: flat bands of cividis, one path for each level, cut to the outline. */
export const MapCells = memo(function MapCells({ map, prefix }: { readonly map: PanelMap; readonly prefix: string }) {
  const { grid, limits, outline } = map
  const paths = useMemo(() => levelPaths(grid, limits), [grid, limits])
  const clip = `${prefix}-map-${map.view}-${map.panelId}`
  return (
    <>
      <clipPath id={clip}>
        <path d={outline} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <g className="map-cells" transform={`translate(${grid.u} ${grid.v}) scale(${grid.cellMm})`}>
          {paths.map((path, level) => (
            <path
              key={levelColour(level, paths.length)}
              className="panel-hatch"
              d={path}
              fill={levelColour(level, paths.length)}
            />
          ))}
        </g>
      </g>
    </>
  )
})
