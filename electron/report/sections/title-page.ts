import { printedRules, titlePitch } from '../../../shared-types/tokens.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { breakLines, type Rich } from '../layout/line-breaking.ts'
import { BASELINE_MM, FIELD_WIDTH_MM, LINE_MM } from '../layout/page-geometry.ts'
import { editionName, relatesOnly } from '../layout/running-matter.ts'
import { drawLine, textPieces } from '../layout/text-block.ts'
import { inks, styles, type TextStyle } from '../layout/text-style.ts'
import { daysText, dayText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { place } from '../wording/references.ts'
import { builtInterval, conditionsSentence, levelDone } from '../wording/sentences.ts'
import { drawTitlePicture } from './title-picture.ts'

const TITLE_TOP_LINE = 1
const LEAST_PICTURE_LINES = 16
/** Rows of the title table stand a line apart, with the rule midway between letters above and below. */
const ROW_SPACE_LINES = 1
const ROW_SPACE_MM = ROW_SPACE_LINES * LINE_MM
const RULE_MM = 2.2

/** The title page: what kind of report, which car, its side view, and the table of dates and parties. */
export function composeTitlePage(composer: Composer): void {
  const { flow, geometry, document, content, section } = composer
  const { particulars } = content.record
  const set = (rich: Rich, top: number, pitch: number, owner = section.add('P')): number => {
    const lines = breakLines(rich, FIELD_WIDTH_MM)
    lines.forEach((line, index) => {
      drawLine(document, flow.page, line, geometry.leftMm - 0.4, top + pitch * index, owner)
    })
    return top + pitch * lines.length
  }
  document.anchor('title', flow.page, geometry.topMm)
  document.bookmarks.push({ title: 'Title page', level: 1, target: 'title' })
  let y = geometry.topMm + TITLE_TOP_LINE * LINE_MM + 6
  y = set(
    [{ text: 'Originality and\ncondition report', style: styles.title }],
    y,
    titlePitch.titleMm,
    section.add('H1'),
  )
  y = set([{ text: particulars.title, style: styles.subtitle }], y + 1, titlePitch.subtitleMm)
  y = set([{ text: subtitle(composer), style: styles.subtitleSoft }], y, titlePitch.subtitleMm)
  flow.line = Math.ceil((y - geometry.topMm - 3) / LINE_MM)
  const rows = tableRows(composer)
  const tableLines = rows.reduce((sum, row) => sum + row.lines, 0)
  const room = Math.floor(geometry.lines - flow.line - tableLines)
  if (room >= LEAST_PICTURE_LINES) {
    const lines = Math.min(room, 30)
    drawTitlePicture(composer, flow.topMm, lines * LINE_MM)
    flow.line += room
  } else {
    flow.line += 1
  }
  flow.place(rows)
  flow.newPage()
}

function subtitle({ content }: Composer): string {
  const { maker, line, colourNow } = content.record.particulars
  const words = [line, maker, builtInterval(content.record.particulars), colourNow === '' ? '' : `now ${colourNow}`]
  return words.filter((word) => word !== '').join('; ')
}

function tableRows(composer: Composer): Piece[] {
  const { content, section } = composer
  const { commission, visits } = content.record
  const owner = section.add('Table')
  const row = (head: string, rich: Rich): Piece[] => {
    const line = owner.add('TR')
    const headPiece = textPieces(composer.document, [{ text: head, style: styles.sideHead }], {
      leftMm: composer.geometry.leftMm,
      widthMm: composer.geometry.sideWidthMm,
      owner: line.add('TH', { scope: 'Row' }),
    })
    const body = textPieces(composer.document, rich, {
      leftMm: composer.geometry.mainLeftMm,
      widthMm: composer.geometry.mainWidthMm,
      owner: line.add('TD'),
    })
    const height = Math.max(headPiece.length, body.length)
    return Array.from(
      { length: height },
      (_, index): Piece => ({
        lines: index === 0 ? 1 + ROW_SPACE_LINES : 1,
        keep: index < height - 1 && height < 20,
        draw: (page, topMm) => {
          if (index === 0) {
            page.belongTo('artifact')
            const { leftMm } = composer.geometry
            const y = topMm + RULE_MM
            page.line(leftMm, y, leftMm + FIELD_WIDTH_MM, y, {
              weightMm: printedRules.thin,
              colour: inks.hair,
            })
          }
          const top = index === 0 ? topMm + ROW_SPACE_MM : topMm
          headPiece[index]?.draw(page, top)
          body[index]?.draw(page, top)
        },
      }),
    )
  }
  const plain = (text: string, style: TextStyle = styles.text): Rich => [{ text, style }]
  const use = commission.intendedUse === 'other' ? 'other use' : commission.intendedUse
  return [
    ...datesRows(composer, owner),
    ...row('Report', [
      { text: editionName(content), style: styles.strong },
      { text: `. ${editionSentence(composer)}`, style: styles.text },
    ]),
    ...row('Kind', plain(fixedTexts().kind)),
    ...row(
      'Issuer',
      plain(
        [commission.examiner, commission.examinerRole, `contact: ${stated(commission.examinerContact)}`]
          .filter((word) => word !== '')
          .join('; '),
      ),
    ),
    ...row('Client', plain(`${stated(commission.client)}. Other users: ${stated(commission.otherUsers)}.`)),
    ...row(
      'Intended use',
      plain(
        `${use}. Title as told: ${stated(commission.titleAsTold)}; ${commission.titleVerified ? 'verified' : 'not verified'}.`,
      ),
    ),
    ...row('Level of inspection', [
      ...levelDone(content).map(({ word, done }) => ({
        text: `${done ? '■' : '□'}\u00A0${word.replaceAll(' ', '\u00A0')}   `,
        style: done ? styles.text : styles.soft,
      })),
      { text: 'What was not inspected, and why: ', style: styles.soft },
      composer.page(place.section('coverage'), styles.soft),
    ]),
    ...row('Conditions', plain(visits.length === 0 ? 'not stated' : visits.map(conditionsSentence).join(' '))),
    ...row('Verification', [
      { text: 'SHA-256 of the newest entry ', style: styles.text },
      { text: content.record.journalHash.slice(0, 16).replace(/(.{4})(?=.)/g, '$1 '), style: styles.mono },
      { text: ' …, in full on ', style: styles.text },
      composer.page(place.section('certification'), styles.text),
      { text: ', with the way to check it.', style: styles.text },
    ]),
    ...row(
      'No certificate',
      plain(
        `${fixedTexts().notACertificate} ${relatesOnly(content).replace(/\. Not to be copied.*/, '.')}`,
        styles.soft,
      ),
    ),
  ]
}

function datesRows(composer: Composer, table: ReturnType<Composer['section']['add']>): Piece[] {
  const { content, geometry, document } = composer
  const { commission, visits } = content.record
  const entries = [
    ['examined', stated(daysText(visits.map(({ beganAt }) => beganAt)))],
    [
      'effective, for all opinions',
      commission.effectiveDate === null ? 'not stated' : dayText(commission.effectiveDate),
    ],
    ['issued', content.edition.number === null ? 'not issued' : dayText(content.edition.issuedAt)],
  ] as const
  const width = geometry.mainWidthMm / entries.length
  const row = table.add('TR')
  const head = row.add('TH', { scope: 'Row' })
  const cells = entries.map(() => row.add('TD'))
  const bodies = entries.map(([label, text]) =>
    breakLines(
      [
        { text: `${label}\n`, style: styles.soft },
        { text, style: styles.text },
      ],
      width - 2,
    ),
  )
  const height = Math.max(...bodies.map((lines) => lines.length))
  return [
    {
      lines: height + ROW_SPACE_LINES,
      draw: (page, topMm) => {
        page.belongTo('artifact')
        const y = topMm + RULE_MM
        page.line(geometry.leftMm, y, geometry.leftMm + FIELD_WIDTH_MM, y, {
          weightMm: printedRules.tableEnd,
          colour: inks.ink,
        })
        const [title] = breakLines([{ text: 'Dates', style: styles.sideHead }], geometry.sideWidthMm)
        if (title !== undefined)
          drawLine(document, page, title, geometry.leftMm, topMm + BASELINE_MM + ROW_SPACE_MM, head)
        bodies.forEach((lines, column) => {
          lines.forEach((line, index) => {
            const left = geometry.mainLeftMm + width * column
            const baseline = topMm + index * LINE_MM + BASELINE_MM + ROW_SPACE_MM
            drawLine(document, page, line, left, baseline, cells[column] ?? 'artifact')
          })
        })
      },
    },
  ]
}

function editionSentence({ content }: Composer): string {
  const { edition } = content
  if (edition.number === null) return 'A preview: it has not been issued and must not be relied on.'
  if (edition.previous === null) return 'The first edition.'
  const { previous } = edition
  return `Replaces edition ${previous.number} (${previous.reportNumber}) of ${dayText(previous.issuedAt)}. Reason: ${stated(edition.reason)}`
}
