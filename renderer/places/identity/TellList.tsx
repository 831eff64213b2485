import { memo, useCallback, useEffect, useState } from 'react'
import type { SettledQuestion } from '../../../shared-types/identity-asking.ts'
import type { TellView } from '../../../shared-types/identity-view.ts'
import type { Observation } from '../../../shared-types/observation.ts'
import { KeyCap } from '../../parts-of-page/KeyCap.tsx'
import { Section } from '../../parts-of-page/Section.tsx'
import { useKeys } from '../../parts-of-page/useKeys.ts'
import { usePanelNames } from '../../store/panel-names.ts'
import { useScreenStore } from '../../store/screen-store.ts'
import { useShownUnits } from '../../store/shown-units.ts'
import { questionWords, type VariableNamed } from './QuestionField.tsx'
import { saidWords } from './said-words.ts'
import { TellAnswer } from './TellAnswer.tsx'

const SHOWN = 8
/** Tells with a figure of their own that opens them. */
const KEYED = 9

interface TellRowProps {
  readonly tell: TellView
  /** Key that opens it; empty where there is none. */
  readonly keys: string
  readonly most: number
  readonly open: boolean
  readonly onOpen: (key: string) => void
}

const TellRow = memo(function TellRow({ tell, keys, most, open, onOpen }: TellRowProps) {
  const bits = tell.bits ?? 0
  return (
    <button
      type="button"
      className="tell-row"
      data-tell={tell.key}
      aria-expanded={open}
      onClick={() => onOpen(tell.key)}
    >
      {keys === '' ? <span /> : <KeyCap keys={keys} />}
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
})

interface TellSaidProps {
  readonly tell: TellView
  readonly open: boolean
  readonly mayChange: boolean
  readonly takeBackWord: string
  readonly onOpen: (key: string) => void
  readonly onTakeBack: (tell: string) => void
}

/** A tell that was looked at, with what was seen; drawn again only when that is another. */
const TellSaid = memo(function TellSaid({ tell, open, mayChange, takeBackWord, onOpen, onTakeBack }: TellSaidProps) {
  const units = useShownUnits()
  return (
    <div className="tell-said">
      <button
        type="button"
        className="link-button"
        data-tell={tell.key}
        aria-expanded={open}
        onClick={() => onOpen(tell.key)}
      >
        {tell.name}
      </button>
      <span className="strong">
        {saidWords(tell, units)}
        {tell.toldBy === null ? null : <span className="under-line">{`read with ${tell.toldBy}`}</span>}
      </span>
      <span className="quiet">{tell.observation?.exhibits.map((number) => `E\u202f${number}`).join(' ') ?? ''}</span>
      <button
        type="button"
        className="action-key"
        disabled={!mayChange || tell.observation === null}
        onClick={() => onTakeBack(tell.key)}
      >
        {takeBackWord}
      </button>
    </div>
  )
})

/** A tell that could not be seen stays open: it is still worth a look. One read as part of a number is not. */
const stillOpen = ({ observation, toldBy }: TellView): boolean =>
  toldBy === null && (observation === null || observation.state === 'cannot be seen')

/** Tells by what each would settle, and those already looked at. */
export const TellList = memo(function TellList(props: {
  readonly tells: readonly TellView[]
  readonly variables: readonly VariableNamed[]
  readonly question: SettledQuestion
  /** Those that take least come first. */
  readonly byEffort: boolean
  readonly mayChange: boolean
  /** Answers are tried and not kept. */
  readonly trying: boolean
  /** What takes back what was said is called. */
  readonly takeBackWord: 'withdraw' | 'set aside'
  readonly onSay: (said: Observation) => Promise<void>
  readonly onTakeBack: (tell: string) => void
}) {
  const { tells, byEffort, mayChange, trying, onSay, onTakeBack } = props
  const nameOf = usePanelNames()
  const [chosen, setChosen] = useState<string | null>(null)
  /** The tell that opens next takes the place of one that was answered; false once the reader opens one himself. */
  const [cameByItself, setCameByItself] = useState(false)
  /** Grows with each tell that is gone into: its answers take the focus. 0 while the reader only reads. */
  const [entered, setEntered] = useState(0)
  const [all, setAll] = useState(false)
  const pointed = useScreenStore((state) => state.pointed)
  useEffect(() => {
    if (pointed?.kind === 'tells') {
      const first = document.querySelector<HTMLElement>('.tell-row') ?? document.getElementById('working-area')
      first?.focus()
      useScreenStore.setState({ pointed: null })
    }
    if (pointed?.kind !== 'tell') return
    setChosen(pointed.key)
    setCameByItself(false)
    setEntered((times) => times + 1)
    useScreenStore.setState({ pointed: null })
  }, [pointed])
  const listed = tells.filter(stillOpen)
  const open = byEffort ? listed.toSorted((one, other) => (other.worth ?? 0) - (one.worth ?? 0)) : listed
  const read = tells.filter((tell) => !stillOpen(tell))
  const most = listed[0]?.bits ?? 0
  const shown = all ? open : open.slice(0, SHOWN)
  const opened = tells.find(({ key }) => key === chosen) ?? shown[0]
  const enter = useCallback((key: string) => {
    setChosen(key)
    setCameByItself(false)
    setEntered((times) => times + 1)
  }, [])
  const rowOf = (key: string) => document.querySelector<HTMLElement>(`[data-tell="${key}"]`)
  useKeys(
    'Tells',
    shown.slice(0, KEYED).map(({ key, name }, at) => ({ keys: String(at + 1), does: name, run: () => enter(key) })),
  )
  const say = async (said: Observation) => {
    await onSay(said)
    // One that cannot be seen stays among the open ones: what comes next is the first that nobody tried.
    const next = open.find(({ key, observation }) => key !== said.tell && observation === null)
    const then = said.state === 'cannot be seen' ? (next?.key ?? null) : null
    // Somebody quick has opened another one meanwhile.
    setChosen((now) => (now === null || now === said.tell ? then : now))
    setCameByItself(true)
    setEntered((times) => times + 1)
  }
  const answerOf = (tell: TellView) =>
    mayChange ? (
      <TellAnswer
        key={tell.key}
        tell={tell}
        panelNames={tell.panels.map(nameOf).join(', ')}
        trying={trying}
        cameByItself={cameByItself}
        focused={entered}
        onSay={say}
        onTakeBack={tell.observation === null ? null : () => onTakeBack(tell.key)}
        onLeave={() => {
          setEntered(0)
          rowOf(tell.key)?.focus()
        }}
      />
    ) : null
  return (
    <>
      <Section
        head="Look next"
        level="column"
        beside={`by what each would settle of ${questionWords(props.question, props.variables)}; 1 bit halves what is open`}
      >
        {shown.map((tell, at) => (
          <div key={tell.key} className="tell">
            <TellRow
              tell={tell}
              keys={at < KEYED ? String(at + 1) : ''}
              most={most}
              open={tell === opened}
              onOpen={enter}
            />
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
        beside={`${read.length} of ${tells.length}; bits overlap, so they do not add up`}
      >
        {read.map((tell) => (
          <div key={tell.key} className="tell">
            <TellSaid
              tell={tell}
              open={tell === opened}
              mayChange={mayChange}
              takeBackWord={props.takeBackWord}
              onOpen={enter}
              onTakeBack={onTakeBack}
            />
            {tell === opened ? answerOf(tell) : null}
          </div>
        ))}
      </Section>
    </>
  )
})
