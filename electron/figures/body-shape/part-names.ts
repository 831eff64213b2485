import type { BodyStyle } from '../../../shared-types/words.ts'

/** Parts of a drophead that its folding roof covers in one piece. */
const underCloth = new Set([
  'roof-skin',
  'roof-rail.L',
  'mid-post-upper.L',
  'side-glass-surround.L',
  'rear-post.L',
  'rear-glass-surround',
])

/**
 * The panel a part of the drawing belongs to on a car with these conditions, for its left half: a car without a
 * separate lamp housing has it as part of its wing, and so on. Parts that begin with `open` are no panel.
 */
export function panelOf(part: string, body: BodyStyle, conditions: ReadonlySet<string>): string {
  if (body === 'convertible') {
    if (underCloth.has(part)) return 'folding-roof-cover'
    if (part === 'header strip') return 'front-roof-rail'
  }
  switch (part) {
    case 'header strip':
      return 'roof-skin'
    case 'tail door below':
      return conditions.has('split-tail-door') ? 'tail-door-lower' : 'tail-door'
    case 'lamp-housing.L':
      return conditions.has('separate-lamp-housing') ? part : 'front-side.L'
    case 'mid-post-upper.L':
      return conditions.has('pillared') ? part : withoutPost(body)
    case 'side-glass-surround.L':
      return conditions.has('fixed-rear-side-window') ? part : body === 'estate' ? 'rear-side.L' : 'rear-post.L'
    default:
      break
  }
  const [wing, behind] = part.split(' behind the wheel')
  if (wing === undefined || behind === undefined) return part
  return conditions.has('bolted-rear-side') ? 'rear-side-bolted.L' : wing
}

/** What stands behind the front door where no post of its own does. */
function withoutPost(body: BodyStyle): string {
  if (body === 'pickup') return 'cab-corner.L'
  return body === 'van' ? 'cargo-side.L' : 'front-door.L'
}

/** The same panel on the other side of the car; a panel of the middle is its own. */
export const otherSide = (panel: string): string => (panel.endsWith('.L') ? `${panel.slice(0, -1)}R` : panel)
