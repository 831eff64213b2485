import type { StructureElement } from '../document/structure-tree.ts'
import type { Composer } from '../layout/composer.ts'
import { stated } from '../layout/composer.ts'
import type { Piece } from '../layout/flow.ts'
import { styles } from '../layout/text-style.ts'
import { dayText, instantText } from '../wording/dates.ts'
import { fixedTexts } from '../wording/fixed-texts.ts'
import { figure, NARROW } from '../wording/numbers.ts'
import { place } from '../wording/references.ts'
import { levelDone } from '../wording/sentences.ts'

/** Who asked what, what was done for it and what was not, in which conditions, with whose leave. */
export function composeCommission(composer: Composer): void {
  const { commission, visits, consents } = composer.content.record
  composer.openSection('commission', 'Commission and scope')
  const line = (owner: StructureElement, label: string, text: string) =>
    composer.labelled(owner, label, [{ text, style: styles.text }])
  composer.block({ title: 'Parties' }, (owner) => [
    ...line(owner, 'examiner', [commission.examiner, commission.examinerRole].filter(Boolean).join(', ')),
    ...line(owner, 'contact', stated(commission.examinerContact)),
    ...line(owner, 'competence', stated(commission.examinerCompetence)),
    ...line(owner, 'client', stated(commission.client)),
    ...line(owner, 'other users', stated(commission.otherUsers)),
    ...line(owner, 'may not rely on it', stated(commission.notForReliance)),
  ])
  composer.block({ title: 'Use and question' }, (owner) => [
    ...line(owner, 'intended use', commission.intendedUse),
    ...line(owner, 'question', stated(commission.question)),
    ...line(
      owner,
      'title',
      `As told: ${stated(commission.titleAsTold)}. ${commission.titleVerified ? 'Verified.' : 'Not verified.'}`,
    ),
  ])
  composer.block({ title: 'Assumptions\nand conditions', note: 'they may affect the results' }, (owner) => [
    ...composer.text(owner, [
      {
        text: commission.assumptions.trim() === '' ? 'No assumption is stated.' : commission.assumptions,
        style: styles.text,
      },
    ]),
  ])
  composer.block({ title: 'Done', note: 'at the level chosen' }, (owner) => [
    ...composer.text(owner, `Level: ${commission.level}. By layer, ${coverageSentence(composer)}`),
    ...composer.text(
      owner,
      `Covered: ${levelDone(composer.content)
        .filter(({ done }) => done)
        .map(({ word }) => word)
        .join('; ')}.`,
    ),
  ])
  composer.block({ title: 'Not done' }, (owner) => [
    ...notCovered(composer, owner),
    ...fixedTexts().notDone.flatMap((text) => composer.text(owner, text)),
  ])
  for (const visit of visits) {
    composer.block({ title: `Examination V${NARROW}${visit.number}`, note: dayText(visit.beganAt) }, (owner) => [
      ...line(
        owner,
        'from, to',
        `${instantText(visit.beganAt)}; ${visit.endedAt === null ? 'end not stated' : instantText(visit.endedAt)}`,
      ),
      ...line(owner, 'place', stated(visit.place)),
      ...line(owner, 'light, weather', `${stated(visit.light)}; ${stated(visit.weather)}`),
      ...line(owner, 'surface, support', `${visit.surface}; car ${visit.support}`),
      ...line(
        owner,
        'temperature',
        visit.temperatureC === null ? 'not stated' : `${figure(visit.temperatureC)}${NARROW}°C`,
      ),
      ...line(owner, 'present', stated(visit.present)),
      ...line(owner, 'odometer', stated(visit.odometer)),
      ...line(owner, 'on arrival', stated(visit.stateOnArrival)),
    ])
  }
  composer.block({ title: 'Intrusive steps', note: 'owner’s leave, and what was disturbed' }, (owner) =>
    consents.length === 0
      ? composer.text(owner, 'No leave is recorded and no intrusive step was taken.')
      : composer.table(owner, {
          caption: [{ text: 'Steps that touch or change the car.', style: styles.caption }],
          columns: [
            { head: 'step', widthMm: 26 },
            { head: 'leave', widthMm: 15 },
            { head: 'by, on', widthMm: 47 },
            { head: 'what was disturbed, made good', widthMm: 42 },
          ],
          rows: consents.map((consent) => ({
            cells: [
              [{ text: consent.step, style: styles.cell }],
              [{ text: consent.given ? 'given' : 'not given', style: styles.cell }],
              [
                {
                  text: [stated(consent.by), consent.on === null ? '' : dayText(consent.on)].filter(Boolean).join(', '),
                  style: styles.cell,
                },
              ],
              [{ text: consent.done === '' ? 'not done' : consent.done, style: styles.cell }],
            ],
          })),
        }),
  )
  composer.block({ title: 'Independence\nand helpers' }, (owner) => [
    ...line(owner, 'independence', stated(commission.independence)),
    ...line(owner, 'helpers', stated(commission.helpers)),
    ...line(owner, 'privacy', fixedTexts().confidentiality),
  ])
}

function coverageSentence({ content }: Composer): string {
  return content.judgement.coverage
    .map(({ layer, seen, walked, all }) =>
      walked === all
        ? `${layer} ${seen} of ${walked} panels of the walk inspected`
        : `${layer} ${seen} of ${all} panels inspected, ${walked === 0 ? 'none' : walked} in the walk`,
    )
    .join('; ')
    .concat('.')
}

function notCovered(composer: Composer, owner: StructureElement): Piece[] {
  const words = levelDone(composer.content)
    .filter(({ done, word }) => !done && !word.startsWith('parts removed'))
    .map(({ word }) => word)
  const out = composer.content.panels.panels.filter(({ walked }) => !walked).length
  if (words.length === 0) return []
  return composer.text(owner, [
    { text: `The level leaves out: ${words.join('; ')} (${out} panels, `, style: styles.text },
    composer.page(place.section('coverage'), styles.text),
    { text: ').', style: styles.text },
  ])
}
