import type { Commission, Particulars } from '../../../shared-types/car.ts'
import type { Claim } from '../../../shared-types/claim.ts'
import type { Finding } from '../../../shared-types/finding.ts'
import type { EntryPoint, MissingLine } from '../../../shared-types/missing-line.ts'
import type { RecordView } from '../../../shared-types/record.ts'

interface Requirement extends Omit<MissingLine, 'at'> {
  /** Where it is still to be given; null where nothing is missing. */
  lackingAt(record: RecordView): EntryPoint | null
}

const blank = (text: string): boolean => text.trim() === ''

/** Line ids are those of `resources/report/checklist.json`. */
const requirements: readonly Requirement[] = [
  inCommission('R02', 'a contact of the examiner', 'examinerContact'),
  inCommission('R02', 'the competence of the examiner', 'examinerCompetence'),
  inCommission('R03', 'the client', 'client'),
  inCommission('R03', 'other intended users, or that there are none', 'otherUsers'),
  inCommission('R03', 'who may not rely on the report', 'notForReliance'),
  inCommission('R05', 'the state of the title as told', 'titleAsTold'),
  need('R06', 'the day of an examination', 'Identity', ({ visits }) =>
    visits.length === 0 ? { kind: 'visit', key: '' } : null,
  ),
  inCommission('R06', 'the effective date of the opinions', 'effectiveDate'),
  need('R07', 'place and light of every examination', 'Identity', ({ visits }) => {
    const visit = visits.find(({ place, light }) => blank(place) || blank(light))
    return visit === undefined ? null : at('visit', visit.number, blank(visit.place) ? 'place' : 'light')
  }),
  need('R11', 'at least one number, found or looked for', 'Identity', ({ carNumbers }) =>
    carNumbers.length === 0 ? { kind: 'carNumber', key: '' } : null,
  ),
  need('R11', 'a photograph of each number found', 'Identity', ({ carNumbers }) =>
    firstAt('carNumber', carNumbers, ({ asRead, exhibits }) => asRead !== '' && exhibits.length === 0, 'exhibits'),
  ),
  inParticulars(
    'R13',
    'the interval in which the car was built',
    'builtFrom',
    ({ builtFrom, builtTo }) => builtFrom === null && builtTo === null,
  ),
  inParticulars('R13', 'the grounds of the build interval', 'builtGrounds', ({ builtGrounds }) => blank(builtGrounds)),
  need(
    'R18',
    'the reason why a panel of the walk was not looked at: mark it not accessible, or look',
    'Walk-round',
    ({ panels }) => {
      if (panels.length === 0) return { kind: 'panel', key: '' }
      const panel = panels.find(({ inspection }) => inspection === 'not inspected')
      return panel === undefined ? null : { kind: 'panel', key: panel.panelId }
    },
  ),
  need('R20', 'a check of every gauge used', 'Coating', ({ spots, gaugeChecks }) => {
    const spot = spots.find(({ gauge }) => gauge === null || !gaugeChecks.some((check) => check.gauge === gauge))
    if (spot === undefined) return null
    return spot.gauge === null ? at('spotReading', spot.number) : at('gaugeCheck', spot.gauge)
  }),
  inParticulars('R23', 'material and construction of the car', 'construction', ({ construction }) =>
    blank(construction),
  ),
  ofFindings(
    'R24',
    'the size of every finding that lies at a place',
    ({ extent, lengthMm }) => extent !== null && extent.shape !== 'point' && lengthMm === null,
  ),
  ofFindings(
    'R28',
    'an exhibit for every marked or severe finding',
    ({ severity, exhibits }) => (severity === 'marked' || severity === 'severe') && exhibits.length === 0,
  ),
  ofFindings(
    'R29',
    'the uncertainty of every measured size',
    ({ lengthMm, sizeUncertaintyMm }) => lengthMm !== null && sizeUncertaintyMm === null,
  ),
  ofClaims('R38', 'question and both propositions of every claim', (claim) =>
    (['question', 'ifTrue', 'ifNot'] as const).find((field) => blank(claim[field])),
  ),
  ofClaims('R39', 'a strength for every claim with a verdict', ({ verdict, strength }) =>
    verdict !== 'not settled' && strength === 'not stated' ? 'strength' : undefined,
  ),
  ofClaims('R41', 'what would settle each claim that is not settled', ({ verdict, wouldSettle }) =>
    verdict === 'not settled' && blank(wouldSettle) ? 'wouldSettle' : undefined,
  ),
  inCommission('R46', 'the assumptions made, or that there are none', 'assumptions'),
  need('R47', 'a cost range for every planned correction', 'Putting right', ({ corrections }) =>
    firstAt('correction', corrections, ({ state, cost }) => state === 'planned' && cost === null),
  ),
  inCommission('R54', 'independence and interests', 'independence'),
  inCommission('R56', 'who reviewed the report before issue', 'review'),
]

function need(line: string, missing: string, place: string, lackingAt: Requirement['lackingAt']): Requirement {
  return { line, missing, place, lackingAt }
}

function at(kind: EntryPoint['kind'], number: number, field?: string): EntryPoint {
  return { kind, key: String(number), ...(field === undefined ? {} : { field }) }
}

function firstAt<Row extends { readonly number: number }>(
  kind: EntryPoint['kind'],
  rows: readonly Row[],
  lacks: (row: Row) => boolean,
  field?: string,
): EntryPoint | null {
  const row = rows.find(lacks)
  return row === undefined ? null : at(kind, row.number, field)
}

function inCommission(line: string, missing: string, field: keyof Commission): Requirement {
  return need(line, missing, 'Identity', ({ commission }) =>
    blank(String(commission[field] ?? '')) ? { kind: 'commission', key: '', field } : null,
  )
}

function inParticulars(
  line: string,
  missing: string,
  field: keyof Particulars,
  lacks: (particulars: Particulars) => boolean,
): Requirement {
  return need(line, missing, 'Identity', ({ particulars }) =>
    lacks(particulars) ? { kind: 'particulars', key: '', field } : null,
  )
}

function ofFindings(line: string, missing: string, lacks: (finding: Finding) => boolean): Requirement {
  return need(line, missing, 'Walk-round', ({ findings }) => firstAt('finding', findings, lacks))
}

/** `lacking` names the first field that a claim lacks. */
function ofClaims(line: string, missing: string, lacking: (claim: Claim) => keyof Claim | undefined): Requirement {
  return need(line, missing, 'Identity', ({ claims }) => {
    const claim = claims.find((each) => lacking(each) !== undefined)
    return claim === undefined ? null : at('claim', claim.number, lacking(claim))
  })
}

/** Lines whose data the record does not hold yet. A report is issued all the same and prints "not stated". */
export function missingLines(record: RecordView): MissingLine[] {
  return requirements.flatMap(({ line, missing, place, lackingAt }) => {
    const lacking = lackingAt(record)
    return lacking === null ? [] : [{ line, missing, place, at: lacking }]
  })
}
