import type { Finding } from '../../../shared-types/finding.ts'
import type { PanelDefinition, PanelState } from '../../../shared-types/panel.ts'
import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { gap, type Piece } from '../layout/flow.ts'
import type { Rich, Span } from '../layout/line-breaking.ts'
import { styles } from '../layout/text-style.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { numbered, place } from '../wording/references.ts'
import { extentWords, gradeWords, placeSentence } from '../wording/sentences.ts'
import { composePanelsWithout, type PanelWithout, seenWords, withoutWords } from './panels-without-findings.ts'

/** A finding up to this height is never split. */
const MOST_LINES_KEPT = 24

/** Findings panel by panel in walking order. What was observed, what is judged and what is suspected never share a line. */
export function composeFindings(composer: Composer): void {
  composer.openSection('findings', 'Findings by panel')
  const { record, panels } = composer.content
  composer.block({ title: 'How to read it' }, (owner) => [
    ...composer.text(owner, [{ text: fixedTexts().readingGrades, style: styles.soft }]),
    ...composer.text(owner, [
      {
        text: 'Observed is what was there; judged is what the examiner makes of it; a suspected cause is a guess and stands apart.',
        style: styles.soft,
      },
    ]),
  ])
  const states = new Map(record.panels.map((state) => [state.panelId, state]))
  let any = false
  let without: PanelWithout[] = []
  const composeWithout = () => {
    const [first, ...rest] = without
    if (first !== undefined && rest.length === 0) composePanel(composer, first.panel, first.state, [])
    else composePanelsWithout(composer, without)
    without = []
  }
  for (const panel of panels.panels) {
    const state = states.get(panel.id)
    const findings = record.findings.filter(({ panelId }) => panelId === panel.id)
    if (findings.length > 0) {
      composeWithout()
      composePanel(composer, panel, state, findings)
    } else if (state?.inspection === 'inspected') without.push({ panel, state })
    else continue
    any = true
  }
  composeWithout()
  const unplaced = record.findings.filter(({ panelId }) => !composer.panels.has(panelId))
  for (const finding of unplaced) {
    any = true
    composer.block({ title: finding.panelId, note: 'no panel of this body' }, (owner) =>
      findingPieces(composer, owner, finding),
    )
  }
  if (!any)
    composer.block({ title: 'Findings' }, (owner) =>
      composer.text(owner, 'No panel has been inspected and no finding is recorded.'),
    )
}

function composePanel(
  composer: Composer,
  panel: PanelDefinition,
  state: PanelState | undefined,
  findings: readonly Finding[],
): void {
  const name = composer.panelName(panel.id)
  const target = place.panel(panel.id)
  if (findings.length > 0) composer.bookmark(`${panel.stop}  ${name}`, target)
  const titleRich: Rich = [
    composer.linked(`${panel.stop}`, styles.reference, place.planRow(panel.id)),
    { text: `  ${name}`, style: styles.sideHead },
  ]
  composer.block({ title: name, titleRich, note: stateWords(state), anchors: [target] }, (owner) => [
    ...(findings.length === 0
      ? composer.text(owner, withoutWords(state))
      : findings.flatMap((finding, index) => [
          ...(index > 0 ? [gap(1)] : []),
          ...findingPieces(composer, owner, finding),
        ])),
    ...(state === undefined || state.note === ''
      ? []
      : composer.labelled(owner, 'note on the panel', [{ text: state.note, style: styles.text }])),
  ])
}

function stateWords(state: PanelState | undefined): string {
  if (state === undefined) return 'not inspected'
  if (state.inspection !== 'inspected') return state.inspection
  return [`metal: ${state.metal}`, `paint: ${state.paint}`, ...seenWords(state)].join('\n')
}

function findingPieces(composer: Composer, owner: StructureElement, finding: Finding): Piece[] {
  const { record } = composer.content
  const target = place.finding(finding.number)
  const head: Rich = [
    { text: numbered('F', finding.number), style: styles.reference },
    { text: `   ${finding.kind}`, style: styles.strong },
    { text: finding.dangerous ? '   can hurt somebody' : '', style: styles.strong },
  ]
  const [first, ...rest] = composer.text(owner, head, { type: 'H3' })
  const anchored = composer.anchored(target, first === undefined ? [] : [{ ...first, keep: true }])
  const learned = ['told', 'inferred'].includes(finding.learned)
    ? `${finding.learned}${finding.learnedFrom === '' ? ', source not stated' : `: ${finding.learnedFrom}`}`
    : finding.learned
  const extent = extentWords(finding, record.commission)
  const grade = gradeWords(finding.grade)
  const layer = finding.layer === 'inner' ? 'inner structure' : finding.layer
  const observed = [
    finding.note,
    `Layer: ${layer}. ${placeSentence(finding, record.commission.lengthUnit)} Size: ${extent === '' ? 'not measured' : extent}.${grade === '' ? '' : ` Grade: ${grade}.`} Learned: ${learned}.`,
  ].filter((text) => text !== '')
  const cited: Span[] = [
    ...finding.exhibits.map((number) => composer.exhibit(number, styles.text)),
    ...record.claims
      .filter(({ findings }) => findings.includes(finding.number))
      .map(({ number }) => composer.linked(numbered('C', number), styles.text, place.claim(number))),
    ...record.corrections
      .filter(({ findings, findingsAfter }) => [...findings, ...findingsAfter].includes(finding.number))
      .map(({ number }) => composer.linked(numbered('K', number), styles.text, place.correction(number))),
  ]
  const pieces = [
    ...anchored,
    ...rest,
    ...composer.labelled(owner, 'observed', [{ text: observed.join('\n'), style: styles.text }]),
    ...composer.labelled(owner, 'judged', [
      {
        text: `severity ${finding.severity}; urgency ${finding.urgency}; measure: ${finding.action}`,
        style: styles.text,
      },
    ]),
    ...composer.labelled(owner, 'suspected cause', [
      { text: finding.suspectedCause === '' ? 'none stated' : finding.suspectedCause, style: styles.emphasis },
    ]),
    ...composer.labelled(owner, 'exhibits, cited by', composer.list(cited, 'no exhibit', styles.text)),
  ]
  const lines = pieces.reduce((sum, piece) => sum + piece.lines, 0)
  if (lines > MOST_LINES_KEPT) return pieces
  return pieces.map((piece, index) => ({ ...piece, keep: index < pieces.length - 1 }))
}
