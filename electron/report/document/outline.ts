import { withoutIsolates } from './bidirectional.ts'
import type { ObjectWriter } from './object-writer.ts'
import { type PDFRef, textString } from './pdf-objects.ts'

/** A line of the outline; level 2 lies under the section before it. `target` is a named place. */
export interface Bookmark {
  readonly title: string
  readonly level: 1 | 2
  readonly target: string
}

interface Item {
  readonly ref: PDFRef
  readonly bookmark: Bookmark
  readonly kids: Item[]
}

/** Writes the bookmarks (ISO 32000-1, 12.3.3), sections open, what is under them shut. */
export function writeOutline(
  writer: ObjectWriter,
  bookmarks: readonly Bookmark[],
  destination: (target: string) => string | null,
): PDFRef {
  const { context } = writer
  const root = context.nextRef()
  const top: Item[] = []
  for (const bookmark of bookmarks) {
    const item = { ref: context.nextRef(), bookmark, kids: [] }
    const above = top.at(-1)
    if (bookmark.level === 2 && above !== undefined) above.kids.push(item)
    else top.push(item)
  }
  const writeItems = (items: readonly Item[], parent: PDFRef): void => {
    for (const [index, item] of items.entries()) {
      const entry = (name: string, value: string | null | undefined) => (value == null ? '' : `/${name} ${value}`)
      const entries = [
        entry('Title', textString(withoutIsolates(item.bookmark.title))),
        entry('Parent', parent.tag),
        entry('Dest', destination(item.bookmark.target)),
        entry('Prev', items[index - 1]?.ref.tag),
        entry('Next', items[index + 1]?.ref.tag),
        entry('First', item.kids[0]?.ref.tag),
        entry('Last', item.kids.at(-1)?.ref.tag),
        item.kids.length > 0 ? entry('Count', String(-item.kids.length)) : '',
      ]
      writer.write(item.ref, `<<${entries.join('')}>>`)
      writeItems(item.kids, item.ref)
    }
  }
  writeItems(top, root)
  const dictionary = context.obj({ Type: 'Outlines', Count: top.length })
  const [first, last] = [top[0], top.at(-1)]
  if (first !== undefined) dictionary.set(context.obj('First'), first.ref)
  if (last !== undefined) dictionary.set(context.obj('Last'), last.ref)
  writer.write(root, dictionary)
  return root
}
