import { useState } from 'react'
import type { IdentityView, TellView } from '../../../shared-types/identity-view.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import { measuredForm } from '../../parts-of-page/number-forms.ts'
import { Section } from '../../parts-of-page/Section.tsx'
import { usePanelNames } from '../../store/panel-names.ts'
import { TellAnswer } from './TellAnswer.tsx'

const SHOWN = 8

function TellRow(props: {
  readonly tell: TellView
  readonly most: number
  readonly open: boolean
  readonly onOpen: () => void
}) {
  const { tell, most, open, onOpen } = props
  const bits = tell.bits ?? 0
  return (
    <button type="button" className="tell-row" aria-expanded={open} onClick={onOpen}>
      <span className={open ? 'strong' : ''}>
        {tell.name}
        {tell.observation === null ? null : <span className="quiet"> could not be seen</span>}
      </span>
      <span className="tell-bar" aria-hidden="true">
        <span style={{ width: `${most === 0 ? 0 : (100 * bits) / most}%` }} />
      </span>
      <span className="figures">{`${bits.toFixed(2)} bit`}</span>
    </button>
  )
}

/** A tell that could not be seen stays open: it is still worth a look. */
const stillOpen = ({ observation }: TellView): boolean => observation === null || observation.state === 'cannot be seen'

/** What is said of a tell that was looked at, in a few words. */
function saidWords({ observation, values, unit }: TellView): string {
  if (observation === null) return ''
  const { state, value, measured, surePercent } = observation
  const name = values.find(({ id }) => id === value)?.name ?? ''
  if (state === 'measured' && measured !== null)
    return measuredForm(String(measured.value), `${2 * measured.standardUncertainty} ${unit ?? ''}`.trim())
  return state === 'believed' ? `${name}, ${surePercent} % sure` : state === 'seen' ? name : state
}

/** Tells by what each would settle, and those already looked at. */
export function TellList(props: {
  readonly view: IdentityView
  readonly mayChange: boolean
  readonly onSay: (said: Observation) => void
  readonly onTakeBack: (tell: string) => void
}) {
  const { view, mayChange, onSay, onTakeBack } = props
  const nameOf = usePanelNames()
  const [chosen, setChosen] = useState<string | null>(null)
  const [all, setAll] = useState(false)
  const open = view.tells.filter(stillOpen)
  const read = view.tells.filter((tell) => !stillOpen(tell))
  const most = open[0]?.bits ?? 0
  const shown = all ? open : open.slice(0, SHOWN)
  const opened = view.tells.find(({ key }) => key === chosen) ?? shown[0]
  const answerOf = (tell: TellView) =>
    mayChange ? (
      <TellAnswer
        key={tell.key}
        tell={tell}
        panelNames={tell.panels.map(nameOf).join(', ')}
        onSay={(said) => {
          setChosen(null)
          onSay(said)
        }}
      />
    ) : null
  return (
    <>
      <Section
        head="Look next"
        level="column"
        beside="tells not yet looked at, by what each would settle of the whole build"
      >
        {shown.map((tell) => (
          <div key={tell.key} className="tell">
            <TellRow tell={tell} most={most} open={tell === opened} onOpen={() => setChosen(tell.key)} />
            {tell === opened ? answerOf(tell) : null}
          </div>
        ))}
        {open.length > SHOWN ? (
          <button type="button" className="action-key" onClick={() => setAll(!all)}>
            {all ? 'show the first ones only' : `show all ${open.length}`}
          </button>
        ) : null}
        {open.length === 0 ? <p className="note">Every tell of the sheets was looked at.</p> : null}
      </Section>
      <Section
        head="Looked at"
        level="column"
        beside={`${read.length} of ${view.tells.length}; bits overlap, so they do not add up`}
      >
        {read.map((tell) => (
          <div key={tell.key} className="tell">
            <div className="tell-said">
              <button
                type="button"
                className="link-button"
                aria-expanded={tell === opened}
                onClick={() => setChosen(tell.key)}
              >
                {tell.name}
              </button>
              <span className="strong">{saidWords(tell)}</span>
              <span className="quiet">
                {tell.observation?.exhibits.map((number) => `E\u202f${number}`).join(' ') ?? ''}
              </span>
              <button type="button" className="action-key" disabled={!mayChange} onClick={() => onTakeBack(tell.key)}>
                withdraw
              </button>
            </div>
            {tell === opened ? answerOf(tell) : null}
          </div>
        ))}
      </Section>
    </>
  )
}
