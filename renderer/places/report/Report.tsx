import { useState } from 'react'
import type { Paper } from '../../../shared-types/edition.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { KeyChoice } from '../../parts-of-page/KeyChoice.tsx'
import { PlacePage } from '../../parts-of-page/PlacePage.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { RecordPlace } from '../../parts-of-page/RecordPlace.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { door } from '../../store/door.ts'
import { useAnswer } from '../../store/use-answer.ts'
import { EditionList } from './EditionList.tsx'
import { IssueForm } from './IssueForm.tsx'
import { PdfPages } from './PdfPages.tsx'
import { ReadinessList } from './ReadinessList.tsx'
import { RegisterFiles } from './RegisterFiles.tsx'
import { usePreview } from './use-preview.ts'
import '../place-lines.css'
import './report.css'

const papers = [
  { choice: 'A4', keys: 'A', words: 'A4', means: '210 × 297 mm' },
  { choice: 'Letter', keys: 'L', words: 'Letter', means: '8½ × 11 in' },
] as const

function ReportPage({ record }: { readonly record: RecordView }) {
  const [paper, setPaper] = useState<Paper>(record.editions.at(-1)?.paper ?? 'A4')
  const [issuing, setIssuing] = useState(false)
  /** Edition that is shown instead of the preview. */
  const [edition, setEdition] = useState<number | null>(null)
  const preview = usePreview(record, paper, edition === null, !issuing)
  const readiness = useAnswer('report.readiness', {}, record.journalNumber)
  const issue = () => {
    if (!record.readOnly) setIssuing(true)
  }
  /** From an edition back to the preview; from the preview, one made anew. */
  const takePreview = () => {
    setEdition(null)
    if (edition === null || preview.document === null || preview.stale) preview.make()
  }
  useKeys('Report', [
    { keys: 'P', does: edition === null ? 'make the preview anew' : 'show the preview', run: takePreview },
    { keys: 'I', does: 'issue an edition', run: issue },
    ...papers.map(({ choice, keys, words }) => ({ keys, does: `${words} paper`, run: () => setPaper(choice) })),
  ])
  const address =
    edition === null
      ? preview.document === null
        ? null
        : door().address(`document/${preview.document}`)
      : door().address(`edition/${edition}`)
  return (
    <PlacePage
      name="Report"
      sheetName="Issue"
      {...(issuing
        ? {
            sheet: (
              <IssueForm
                record={record}
                paper={paper}
                toState={readiness.value}
                onLeave={() => setIssuing(false)}
                onIssued={setEdition}
              />
            ),
          }
        : {})}
    >
      <div className="report-columns">
        <div>
          <ReadinessList readiness={readiness} readOnly={record.readOnly} />
          <Section head="Paper" level="column">
            <KeyChoice
              label="Paper"
              labelShown={false}
              layout="line"
              choices={papers}
              value={paper}
              onChoose={setPaper}
            />
          </Section>
          <EditionList record={record} shown={edition} onShow={setEdition} onIssue={issue} />
          <RegisterFiles />
        </div>
        <PdfPages
          key={edition ?? paper}
          address={address}
          head={edition === null ? 'Preview' : `Edition ${edition}`}
          paper={paper}
          isPreview={edition === null}
          stale={edition === null && preview.stale}
          busy={preview.busy}
          comes={!issuing && preview.problem === null}
          onMake={takePreview}
        >
          <ProblemNote problem={preview.problem} />
        </PdfPages>
      </div>
    </PlacePage>
  )
}

/** Report: what must still be stated, the preview, and the editions that were issued. */
export function Report() {
  return <RecordPlace name="Report">{(record) => <ReportPage record={record} />}</RecordPlace>
}
