import { createRequire } from 'node:module'
import type { Font, Glyph } from '@cantoo/fontkit'

const requirePackage = createRequire(import.meta.url)

/**
 * A face opened by the whole shaping engine, which is loaded with the first text that needs it: most reports do not.
 * The engine keeps one object for each glyph with the characters it first stood for; here every text gets its own, so
 * that copied text is what was written even where a face draws two characters alike.
 */
export function openForShaping(bytes: Buffer): Font {
  const { create } = requirePackage('@cantoo/fontkit') as typeof import('@cantoo/fontkit')
  const font = create(bytes) as Font
  const shared = font.getGlyph.bind(font)
  font.getGlyph = (glyphId, codePoints = []) => {
    const glyph = shared(glyphId, codePoints)
    return glyph === null ? null : (Object.create(glyph, { codePoints: { value: codePoints } }) as Glyph)
  }
  return font
}
