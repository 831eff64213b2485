import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { stopImport, useImportStore } from './import-photographs.ts'

/** How far an import is, and which files were refused and why. */
export function ImportNote({ panelId }: { readonly panelId: string | null }) {
  const current = useImportStore((state) => state.current)
  if (current === null || current.panelId !== panelId) return null
  const photographs = current.all === 1 ? 'photograph' : 'photographs'
  return (
    <div className="import-note" role="status">
      {current.ended ? (
        <p>
          {current.taken.length} of {current.all} {photographs} taken
          {current.taken.length === 0 ? '.' : `: ${current.taken.map((number) => `E\u202f${number}`).join(', ')}.`}
        </p>
      ) : (
        <p className="import-busy">
          <progress value={current.done} max={current.all} aria-label="Photographs taken" />
          <span>
            {current.done} of {current.all}
          </span>
          <ActionKey keys="" label="stop" name="Stop taking photographs" onAct={stopImport} />
        </p>
      )}
      {current.refused.map(({ fileName, problem }) => (
        <p key={fileName} className="field-problem">
          {problem.message.includes(fileName) ? problem.message : `${fileName}: ${problem.message}`}
        </p>
      ))}
      <ProblemNote problem={current.problem} />
    </div>
  )
}
