import { quotedText } from './layout/visible-text.ts'
import type { ReportContent } from './report-content.ts'

/**
 * The content with every text of the record, of what was judged from it and of the edition made safe to stand in a
 * sentence: whatever was typed cannot turn round the words the report sets beside it.
 */
export const quotedContent = (content: ReportContent): ReportContent => ({
  ...content,
  record: quoted(content.record),
  judgement: quoted(content.judgement),
  identity: quoted(content.identity),
  timeLine: quoted(content.timeLine),
  edition: quoted(content.edition),
})

function quoted<Value>(value: Value): Value {
  return (
    typeof value === 'string'
      ? quotedText(value)
      : Array.isArray(value)
        ? value.map(quoted)
        : value !== null && typeof value === 'object'
          ? Object.fromEntries(Object.entries(value).map(([name, own]) => [name, quoted(own)]))
          : value
  ) as Value
}
