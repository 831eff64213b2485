import { memo } from 'react'
import type { SettledQuestion } from '../../../shared-types/identity-asking.ts'
import type { VariableView } from '../../../shared-types/identity-view.ts'
import { ChoiceField } from '../../parts-of-page/ChoiceField.tsx'

/** A question as the key of a choice. */
const keyOf = (question: SettledQuestion): string =>
  question.about === 'build'
    ? 'build'
    : question.about === 'variable'
      ? `variable ${question.variable}`
      : `claim ${question.claim}`

/** What there is to know of a variable to ask about it. */
export type VariableNamed = Pick<VariableView, 'key' | 'name'>

/** What a question is about, in words. */
export function questionWords(question: SettledQuestion, variables: readonly VariableNamed[]): string {
  if (question.about === 'build') return 'the whole build'
  if (question.about === 'claim') return `claim C\u202f${question.claim}`
  return variables.find(({ key }) => key === question.variable)?.name ?? question.variable
}

/** What the next looks should settle: the whole build, a variable, or a claim. Weights that change leave it as it stands. */
export const QuestionField = memo(function QuestionField(props: {
  readonly variables: readonly VariableNamed[]
  /** Numbers of the claims that say something in the terms of the sheets. */
  readonly claims: readonly number[]
  readonly question: SettledQuestion
  readonly onChange: (question: SettledQuestion) => void
}) {
  const { variables, claims, question, onChange } = props
  const questions = new Map(
    [
      { about: 'build' } as const,
      ...variables.map(({ key }) => ({ about: 'variable', variable: key }) as const),
      ...claims.map((claim) => ({ about: 'claim', claim }) as const),
    ].map((each): [string, SettledQuestion] => [keyOf(each), each]),
  )
  return (
    <ChoiceField
      label="What the next looks should settle"
      value={keyOf(question)}
      choices={[...questions.keys()]}
      wordsFor={(key) => questionWords(questions.get(key) ?? { about: 'build' }, variables)}
      onChange={(key) => onChange(questions.get(key) ?? { about: 'build' })}
    />
  )
})
