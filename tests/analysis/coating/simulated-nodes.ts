/** Nodes on a grid of about `count` over a rectangle. */
export function gridNodes(widthMm: number, heightMm: number, count: number) {
  const columns = Math.max(1, Math.round(Math.sqrt((count * widthMm) / heightMm)))
  const rows = Math.max(1, Math.round(count / columns))
  const nodes = columns * rows
  return {
    x: Float64Array.from({ length: nodes }, (_, at) => ((at % columns) + 0.5) * (widthMm / columns)),
    y: Float64Array.from({ length: nodes }, (_, at) => (Math.floor(at / columns) + 0.5) * (heightMm / rows)),
    areaMm2: new Float64Array(nodes).fill((widthMm * heightMm) / nodes),
  }
}
