import type { OpenQuestion } from '../../../shared-types/judgement.ts'
import { ReferenceLink } from '../../parts-of-page/ReferenceLink.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'

/** What is not settled, and what would settle it. */
export function OpenQuestions({ questions }: { readonly questions: readonly OpenQuestion[] }) {
  const nameOf = usePanelNames()
  return (
    <Section head="Open questions" level="column" beside={String(questions.length)}>
      {questions.length === 0 ? (
        <p className="place-note">
          No question is written down as open. What was not inspected stays unknown all the same.
        </p>
      ) : null}
      <ul>
        {questions.map((question) => (
          <li key={`${question.text} ${question.wouldSettle}`} className="question-line">
            <p>{question.text}</p>
            <p className="note">
              {question.wouldSettle === ''
                ? 'what would settle it is not stated'
                : `would settle: ${question.wouldSettle}`}
            </p>
            <span className="reference-row">
              {question.references.map((reference) => (
                <ReferenceLink
                  key={`${reference.kind} ${reference.key}`}
                  reference={reference}
                  {...(reference.kind === 'panel' ? { words: nameOf(reference.key) } : {})}
                />
              ))}
            </span>
          </li>
        ))}
      </ul>
    </Section>
  )
}
