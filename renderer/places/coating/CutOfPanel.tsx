import type { CutLine } from '../../../shared-types/coating-cut.ts'
import type { PlanPoint } from '../../../shared-types/finding.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { CutDrawing, CutKey } from '../../drawing/CutDrawing.tsx'
import type { CutEnd } from '../../drawing/CutEnds.tsx'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { NumberField } from '../../parts-of-page/NumberField.tsx'
import { ProblemNote } from '../../parts-of-page/ProblemNote.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useAnswer } from '../../store/use-answer.ts'

interface CutOfPanelProps {
  readonly record: RecordView
  readonly panelId: string
  readonly line: CutLine
  /** How the line was chosen, in words; empty where it was drawn by hand. */
  readonly rule: string
  /** Left upper corner of the panel as drawn, which typed places count from. */
  readonly corner: PlanPoint
  readonly onMove: (end: CutEnd, to: PlanPoint) => void
  /** Draws another line with two presses; null while that is being done. */
  readonly onDraw: (() => void) | null
  /** Back to the line through the thickest place; null where it is that one, or there is none. */
  readonly onRule: (() => void) | null
}

/** As finely as a place on a panel can be pointed at. */
const PLACE_DECIMALS = { mm: 1, in: 2 } as const

const ends = [
  { end: 'from', words: 'First end' },
  { end: 'to', words: 'Second end' },
] as const

/** Thickness along a line across the panel, with the places of its ends as they can be typed. */
export function CutOfPanel(props: CutOfPanelProps) {
  const { record, panelId, line, rule, corner, onMove, onDraw, onRule } = props
  const { value: cut, problem } = useAnswer(
    'coating.cut',
    { panelId, from: line.from, to: line.to },
    record.journalNumber,
  )
  const field = (end: CutEnd, words: string, axis: 'u' | 'v') => (
    <NumberField
      key={`${end} ${axis}`}
      label={`${words}, ${axis === 'u' ? 'across' : 'down'}`}
      quantity="length"
      decimals={PLACE_DECIMALS}
      value={line[end][axis] - corner[axis]}
      onChange={(mm) => {
        if (mm !== null) onMove(end, { ...line[end], [axis]: corner[axis] + mm })
      }}
    />
  )
  return (
    <Section
      head="Cut along a line"
      beside={rule === '' ? 'drawn by hand' : rule}
      action={
        <>
          {onDraw === null ? null : <ActionKey keys="C" label="draw another" name="Draw another line" onAct={onDraw} />}
          {onRule === null ? null : (
            <ActionKey keys="" label="thickest place" name="Cut through the thickest place" onAct={onRule} />
          )}
        </>
      }
    >
      <ProblemNote problem={problem} />
      {onDraw === null ? (
        <p className="note">Press where the line begins, then where it ends. Escape leaves it as it was.</p>
      ) : null}
      {cut?.panelId === panelId && cut.figure !== null ? (
        <>
          <CutDrawing figure={cut.figure} />
          <CutKey />
        </>
      ) : null}
      {cut === null || cut.problem === null ? null : <p className="note">{cut.problem}</p>}
      {cut?.panelId === panelId
        ? cut.words.map((words) => (
            <p key={words} className="note">
              {words}
            </p>
          ))
        : null}
      <div className="field-row">
        {ends.flatMap(({ end, words }) => [field(end, words, 'u'), field(end, words, 'v')])}
      </div>
    </Section>
  )
}
