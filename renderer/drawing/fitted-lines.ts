/**
 * A text broken into lines no wider than the room, at spaces; a word that is too wide by itself is broken inside.
 * `widthOf` gives the width of a text, in the unit of `room`.
 */
export function fittedLines(text: string, room: number, widthOf: (text: string) => number): readonly string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/ +/)) {
    const longer = line === '' ? word : `${line} ${word}`
    if (widthOf(longer) <= room) {
      line = longer
      continue
    }
    if (line !== '') lines.push(line)
    line = ''
    for (const letter of word) {
      if (line !== '' && widthOf(line + letter) > room) {
        lines.push(line)
        line = ''
      }
      line += letter
    }
  }
  return [...lines, line]
}
