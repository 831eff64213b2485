/** What to do while there is no correction: it depends on whether there is anything to put right. */
export function whenNone(findings: number): string {
  if (findings === 0)
    return 'No correction yet. Add findings in the walk-round first; then K plans what puts them right.'
  const known = findings === 1 ? '1 finding is' : `${findings} findings are`
  return `No correction yet. ${known} in the record; K plans what puts ${findings === 1 ? 'it' : 'them'} right.`
}
