import type { Problem } from '../../shared-types/problem.ts'

interface ProblemNoteProps {
  readonly problem: Problem | null
  /** Takes one of the ways out the problem offers. */
  readonly onInstead?: (choice: string) => void
}

/** A problem where it arose: what is wrong, what to do next, and the ways out as answers. */
export function ProblemNote({ problem, onInstead }: ProblemNoteProps) {
  if (problem === null) return null
  return (
    <div className="problem-note" role="alert">
      <p>{problem.message}</p>
      {problem.instead === undefined || onInstead === undefined ? null : (
        <div className="answers">
          {problem.instead.map((choice) => (
            <button type="button" key={choice} className="answer" onClick={() => onInstead(choice)}>
              {choice}
            </button>
          ))}
        </div>
      )}
    </div>
  )
}
