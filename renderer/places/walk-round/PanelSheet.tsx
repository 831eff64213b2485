import { memo } from 'react'
import type { ExtentMark, PanelMark } from '../../../shared-types/figure.ts'
import { type PanelDefinition, panelName, textWithPanelNames } from '../../../shared-types/panel.ts'
import type { RecordView } from '../../../shared-types/record.ts'
import { walkLayerWords } from '../../../shared-types/words.ts'
import { largestPanelView, PanelDrawing } from '../../drawing/PanelDrawing.tsx'
import { ActionKey } from '../../parts-of-page/ActionKey.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useDraftStore, useNameInRecord } from '../../store/draft-store.ts'
import { useRecordStore } from '../../store/record-store.ts'
import { summaryOf } from '../coating/spot-summary.ts'
import { FindingRows } from './FindingRows.tsx'
import { PanelTells } from './PanelTells.tsx'
import { namedSpots, spotLetter } from './panel-spots.ts'
import { thicknessFigure } from './ReadingTable.tsx'
import { enter, useWalkStore } from './walk-store.ts'
import { stateOfPanel } from './walking.ts'

interface PanelSheetProps {
  readonly panel: PanelDefinition
  readonly count: number
  readonly record: RecordView
  readonly mark: PanelMark | undefined
  readonly extents: readonly ExtentMark[]
  readonly onStep: (step: 1 | -1) => void
  readonly onNothingFound: () => void
}

/** The panel in hand: its state, its outline and what was found on it. */
export const PanelSheet = memo(function PanelSheet(props: PanelSheetProps) {
  const { panel, record } = props
  const figure = useWalkStore((state) => state.figure)
  const { names, lengthUnit, coatingUnit } = record.commission
  const state = stateOfPanel(record.panels, panel.id)
  const findings = record.findings.filter((finding) => finding.panelId === panel.id)
  const spots = record.spots.filter((spot) => spot.panelId === panel.id)
  const named = namedSpots(spots)
  const panels = useRecordStore((store) => store.panelList?.panels) ?? []
  const inWords = (text: string) => textWithPanelNames(text, panels, names)
  const begunName = useNameInRecord(`finding.add ${panel.id}`)
  const begun = useDraftStore((store) => begunName in store.drafts)
  const shown = figure === null ? undefined : largestPanelView(figure, panel.id)
  return (
    <>
      <div className="sheet-over">
        <span>
          in hand {panel.stop} of {props.count}, {walkLayerWords[panel.layer]}
        </span>
        <span className="sheet-steps">
          <ActionKey keys="[" label="back" name="Back to the panel before" onAct={() => props.onStep(-1)} />
          <ActionKey keys="]" label="next" name="On to the next panel" onAct={() => props.onStep(1)} />
        </span>
      </div>
      <h2 className="sheet-title" aria-live="polite">
        {panelName(panel, names)}
      </h2>
      <dl className="state-rows">
        <div>
          <dt>Metal</dt>
          <dd>
            {state.inspection === 'not accessible' ? 'not accessible' : state.metal}
            <ActionKey keys="M" label="" name="State of the metal" onAct={() => enter({ kind: 'metal' })} />
          </dd>
        </div>
        <div>
          <dt>Paint</dt>
          <dd>
            {state.paint}
            <ActionKey keys="P" label="" name="State of the paint" onAct={() => enter({ kind: 'paint' })} />
          </dd>
        </div>
      </dl>
      <div className="sheet-quick">
        {state.inspection === 'inspected' && state.nothingFound ? (
          <span className="quiet">inspected, nothing found</span>
        ) : findings.length === 0 && state.inspection !== 'inspected' ? (
          <ActionKey keys="N" label="nothing found" name="Inspected, nothing found" onAct={props.onNothingFound} />
        ) : null}
        {state.inspection === 'not accessible' ? (
          <span className="quiet">not accessible: {state.reason}</span>
        ) : state.inspection === 'not inspected' ? (
          <ActionKey keys="X" label="not accessible" onAct={() => enter({ kind: 'not accessible' })} />
        ) : null}
        {state.backSeen || state.magnetVoid ? (
          <span className="quiet">
            {[state.backSeen ? 'back seen' : '', state.magnetVoid ? 'magnet void' : '']
              .filter((word) => word !== '')
              .join(', ')}
          </span>
        ) : null}
      </div>
      {shown === undefined ? (
        <p className="note">No outline on the plan.</p>
      ) : (
        <PanelDrawing
          view={shown.view}
          panel={shown.panel}
          mark={props.mark}
          extents={props.extents.filter((extent) => extent.panelId === panel.id && extent.view === shown.view.id)}
          spots={spots.flatMap((spot, index) =>
            spot.at === null || spot.view !== shown.view.id
              ? []
              : [
                  {
                    letter: spotLetter(index),
                    named: named.has(spot.number),
                    at: spot.at,
                    figure: thicknessFigure(summaryOf(spot.values).median, coatingUnit),
                  },
                ],
          )}
          cursor={null}
          label={`${panelName(panel, names)}, drawn alone; ${state.metal}`}
        />
      )}
      {state.inspection === 'not inspected' ? (
        <p className="note look-for">
          <span className="look-word">Look:</span> {inWords(panel.look)}. <span className="look-word">Reach:</span>{' '}
          {inWords(panel.access)}.
        </p>
      ) : null}
      <PanelTells panelId={panel.id} />
      <Section
        head="Findings"
        action={
          <ActionKey
            keys="F"
            label={begun ? 'go on with the one begun' : 'add'}
            name={begun ? 'Go on with the finding begun' : 'Add a finding'}
            onAct={() => enter({ kind: 'finding', amends: null })}
          />
        }
      >
        <FindingRows findings={findings} unit={lengthUnit} />
      </Section>
    </>
  )
})
