import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from './composer.ts'
import type { Piece } from './flow.ts'
import type { Rich } from './line-breaking.ts'
import { textPieces } from './text-block.ts'
import { styles, type TextStyle } from './text-style.ts'

/** How far the words of an item stand in from its number. */
const HANG_MM = 7

/** Items of the main column, numbered from 1, the number hanging: where one ends and the next begins is seen at once. */
export function numberedList(
  composer: Composer,
  owner: StructureElement,
  items: readonly Rich[],
  style: TextStyle = styles.soft,
): Piece[] {
  const list = owner.add('L')
  const { mainLeftMm, mainWidthMm } = composer.geometry
  return items.flatMap((rich, index) => {
    const item = list.add('LI')
    const [number] = textPieces(composer.document, [{ text: String(index + 1), style }], {
      leftMm: mainLeftMm,
      widthMm: HANG_MM,
      owner: item.add('Lbl'),
    })
    const words = textPieces(composer.document, rich, {
      leftMm: mainLeftMm + HANG_MM,
      widthMm: mainWidthMm - HANG_MM,
      owner: item.add('LBody'),
    })
    return words.map((piece, line) => ({
      ...piece,
      draw: (page: Parameters<Piece['draw']>[0], topMm: number) => {
        if (line === 0) number?.draw(page, topMm)
        piece.draw(page, topMm)
      },
    }))
  })
}
