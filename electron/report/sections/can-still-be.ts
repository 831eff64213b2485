import type { ClaimOutlook } from '../../../shared-types/identity-more.ts'
import type { ClaimView, IdentityView, NumberReadView, VariableView } from '../../../shared-types/identity-view.ts'
import { thousands } from '../../../shared-types/thousands.ts'
import type { Composer } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { styles } from '../layout/text-style.ts'
import { dayText } from '../wording/dates.ts'
import { numbered, place } from '../wording/references.ts'

const STEPS_PRINTED = 4
const LOOKS_PRINTED = 3

/** What the car can still be by the reference sheets, with grounds; left out where the record holds no sheet. */
export function composeCanStillBe(composer: Composer): void {
  const { identity } = composer.content
  if (identity === null || identity.sheets.length === 0) return
  composer.openSection('can-still-be', 'What the car can still be')
  composer.block({ title: 'On what grounds' }, (owner) => [
    ...composer.text(
      owner,
      `Computed exactly from ${identity.sheets.map(({ title, edition }) => `${title}, edition ${edition}`).join('; ')}, frozen in the record, and from ${looked(identity).length} of ${identity.tells.length} tells looked at. The rules allow ${thousands(identity.legalBuilds)} builds; ${thousands(identity.buildsLeft)} of them could show what was seen.`,
    ),
    ...(identity.problem === null ? [] : composer.text(owner, identity.problem)),
  ])
  if (identity.problem !== null) return
  composer.block({ title: 'Likeliest', note: 'weight before and after looking' }, () =>
    variableTable(composer, identity),
  )
  if (identity.numbers.length > 0)
    composer.block({ title: 'Numbers', note: 'as the sheet reads them' }, (owner) =>
      identity.numbers.flatMap((number) => composeNumber(composer, owner, number)),
    )
  for (const conflict of identity.conflicts) {
    composer.block({ title: 'Contradiction', note: 'these cannot all be so' }, (owner) =>
      conflict.cannotAllBe.flatMap(({ words, source }) => composer.text(owner, `${words} ${source}.`)),
    )
  }
  for (const claim of identity.claims) composeTested(composer, claim, identity)
  composeRarity(composer, identity)
  composeDisagreements(composer, identity)
  composer.block({ title: 'Look next', note: 'what would settle most' }, (owner) =>
    identity.tells
      .filter(({ bits }) => bits !== null)
      .slice(0, LOOKS_PRINTED)
      .flatMap(({ name, lookAt, bits, source }) =>
        composer.text(owner, `${name}: ${lookAt} ${bits?.toFixed(2)} bit of the whole build. ${source}.`),
      ),
  )
  composer.block({ title: 'Scale' }, (owner) => composer.text(owner, [{ text: identity.scale, style: styles.running }]))
}

const looked = ({ tells }: IdentityView) => tells.filter(({ observation }) => observation !== null)

/** A weight as printed, never as certain when it is not. */
function weight(share: number): string {
  if (share > 0 && share < 0.005) return '< 1\u202f%'
  if (share < 1 && share > 0.995) return '> 99\u202f%'
  return `${Math.round(100 * share)}\u202f%`
}

function variableTable(composer: Composer, identity: IdentityView): Piece[] {
  const cell = (text: string, style = styles.cell) => [{ text, style }]
  const best = ({ values }: VariableView) => values.toSorted((one, other) => other.now - one.now)
  return composer.table(composer.section, {
    caption: cell('Every variable of the sheets with its likeliest value and the next.', styles.caption),
    columns: [
      { head: '', widthMm: 30 },
      { head: 'likeliest', widthMm: 36 },
      { head: 'before', widthMm: 14, align: 'right' },
      { head: 'now', widthMm: 14, align: 'right' },
      { head: 'next', widthMm: 24 },
      { head: 'now', widthMm: 12, align: 'right' },
    ],
    rows: identity.variables.map((variable) => {
      const [first, second] = best(variable)
      const span =
        variable.span === null ? '' : `${dayText(variable.span.from)} to ${dayText(variable.span.to)} (90\u202f%)`
      const open = second !== undefined && second.now > 0
      return {
        cells: [
          cell(variable.name),
          cell(span === '' ? (first?.name ?? '') : span, styles.cellStrong),
          cell(span === '' ? weight(first?.before ?? 0) : ''),
          cell(span === '' ? weight(first?.now ?? 0) : ''),
          cell(span === '' && open ? second.name : ''),
          cell(span === '' && open ? weight(second.now) : ''),
        ],
      }
    }),
  })
}

/** One number: what each of its places says of the car, or where it parts from the form. */
function composeNumber(composer: Composer, owner: Composer['section'], number: NumberReadView): Piece[] {
  const said = number.why ?? `${number.says.join('; ')}.`
  const beside = number.standsFor.length === 0 ? '' : ` Counts once with: ${number.standsFor.join(', ')}.`
  const marks = number.rows.length === 0 ? 'on a part' : number.rows.map((row) => numbered('N', row)).join(', ')
  return composer.labelled(owner, marks, [
    { text: `${number.name} ${number.asRead}: ${said}`, style: styles.text },
    { text: `${number.counts ? beside : ' Too unlike the form to be weighed.'} ${number.source}.`, style: styles.soft },
  ])
}

/** How many were built like this, source by source; nothing multiplied, survivors not counted. */
function composeRarity(composer: Composer, { more }: IdentityView): void {
  const rarity = more?.rarity ?? null
  if (rarity === null) return
  composer.block(
    { title: 'Cars built like it', note: rarity.boundsOnly ? 'bounds only' : 'by each source' },
    (owner) => [
      ...composer.text(
        owner,
        `${rarity.words} Like this means: ${rarity.like.map(({ variable, value }) => `${variable} ${value}`).join(', ')}.${rarity.notSettled.length === 0 ? '' : ` Counted too, but not settled of this car: ${rarity.notSettled.join(', ')}.`}`,
      ),
      ...rarity.accounts.flatMap(({ source, low, high, all, notCounted }) =>
        composer.labelled(owner, low === high ? `${low}` : `${low} to ${high}`, [
          { text: `of ${all}. `, style: styles.text },
          {
            text: `${source}.${notCounted.length === 0 ? '' : ` It does not count ${notCounted.join(', ')}.`}`,
            style: styles.soft,
          },
        ]),
      ),
    ],
  )
}

/** Variables on which the sources of the counts disagree, each source by itself. */
function composeDisagreements(composer: Composer, { variables }: IdentityView): void {
  const open = variables.filter(({ bySource }) => bySource.length > 0)
  if (open.length === 0) return
  composer.block({ title: 'Sources disagree', note: 'each by itself' }, (owner) =>
    open.flatMap(({ name, values, bySource }) =>
      bySource.flatMap(({ source, belief, shares }) => {
        const said = values.flatMap((value, at) =>
          (shares?.[at] ?? 0) >= 0.005 ? [`${value.name} ${weight(shares?.[at] ?? 0)}`] : [],
        )
        return composer.labelled(owner, name, [
          { text: `${shares === null ? 'impossible by this source' : said.join(', ')}. `, style: styles.text },
          { text: `${source}; believed ${weight(belief)}.`, style: styles.soft },
        ])
      }),
    ),
  )
}

function composeTested(composer: Composer, claim: ClaimView, { more }: IdentityView): void {
  const outlook = more?.claims.find((each) => each.claim === claim.claim)
  const row = composer.content.record.claims.find(({ number }) => number === claim.claim)
  const side = claim.speaks === 'for' ? 'for it' : claim.speaks === 'against' ? 'against it' : 'neither way'
  composer.block(
    {
      title: '',
      titleRich: [composer.linked(`Claim ${numbered('C', claim.claim)}`, styles.sideHead, place.claim(claim.claim))],
      note: claim.verdict,
    },
    (owner) => [
      ...composer.text(owner, [
        { text: `“${row?.words ?? ''}” `, style: styles.emphasis },
        {
          text: `The findings give ${claim.words} support ${side}${claim.decibans === null ? '' : ` (${signed(claim.decibans)} decibans)`}.`,
          style: styles.text,
        },
      ]),
      ...claim.because.slice(0, STEPS_PRINTED).flatMap(({ words, source, decibans, decisive }) =>
        composer.labelled(owner, decibans === null ? (decisive ?? '') : `${signed(decibans)} dB`, [
          { text: `${words}. `, style: styles.text },
          { text: `${source}.`, style: styles.soft },
        ]),
      ),
      ...(outlook === undefined ? [] : composer.text(owner, outlookWords(claim, outlook))),
    ],
  )
}

/** What would settle an open claim, and for one not supported what would have to be granted for it to be true. */
function outlookWords({ verdict }: ClaimView, { settledBy, story }: ClaimOutlook): string {
  const looks = settledBy.map(({ name, bits }) => `${name} (${bits.toFixed(2)} bit)`).join(', ')
  const settling =
    verdict !== 'not settled'
      ? ''
      : looks === ''
        ? 'No tell left to look at would settle it. '
        : `Would settle it: ${looks}. `
  if (verdict === 'supported') return settling
  if (story === null) return `${settling}No build can be so and have shown what was seen.`
  return `${settling}Cheapest story for it, ${story.decibansBehind.toFixed(1)} decibans behind the best: ${story.argument.join(' ')}`
}

const signed = (value: number): string => `${value < 0 ? '\u2212' : '+'}${Math.abs(value).toFixed(1)}`
