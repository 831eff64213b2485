import { type Document, isCollection, isMap, isNode, isScalar, type LineCounter } from 'yaml'
import type { PlaceOf } from './sheet-problem.ts'

/** Lines of a YAML or JSON text: of the entry itself, or of the nearest one above it that is there. */
export function yamlPlaces(document: Document, lines: LineCounter): PlaceOf {
  return (path) => {
    let node: unknown = document.contents
    let at = isNode(node) ? node.range?.[0] : undefined
    for (const step of path) {
      if (!isCollection(node)) break
      const pair = isMap(node)
        ? node.items.find(({ key }) => (isScalar(key) ? String(key.value) : key) === String(step))
        : null
      if (pair !== null && pair !== undefined && isNode(pair.key)) at = pair.key.range?.[0] ?? at
      node = pair === null ? node.get(step, true) : pair?.value
      if (pair === null && isNode(node)) at = node.range?.[0] ?? at
    }
    return at === undefined ? null : { line: lines.linePos(at).line, within: null }
  }
}
