import type { MissingLine } from '../../../shared-types/missing-line.ts'
import type { RecordView } from '../../../shared-types/record.ts'

interface Requirement extends MissingLine {
  isMissing(record: RecordView): boolean
}

const blank = (text: string): boolean => text.trim() === ''

/** Line ids are those of `resources/report/checklist.json`. */
const requirements: readonly Requirement[] = [
  need('R02', 'a contact of the examiner', 'Identity', (record) => blank(record.commission.examinerContact)),
  need('R02', 'the competence of the examiner', 'Identity', (record) => blank(record.commission.examinerCompetence)),
  need('R03', 'the client', 'Identity', (record) => blank(record.commission.client)),
  need('R03', 'other intended users, or that there are none', 'Identity', (record) =>
    blank(record.commission.otherUsers),
  ),
  need('R03', 'who may not rely on the report', 'Identity', (record) => blank(record.commission.notForReliance)),
  need('R05', 'the state of the title as told', 'Identity', (record) => blank(record.commission.titleAsTold)),
  need('R06', 'the day of an examination', 'Identity', (record) => record.visits.length === 0),
  need('R06', 'the effective date of the opinions', 'Identity', (record) => record.commission.effectiveDate === null),
  need('R07', 'place and light of every examination', 'Identity', (record) =>
    record.visits.some((visit) => blank(visit.place) || blank(visit.light)),
  ),
  need('R11', 'at least one number, found or looked for', 'Identity', (record) => record.carNumbers.length === 0),
  need('R11', 'a photograph of each number found', 'Identity', (record) =>
    record.carNumbers.some(({ asRead, exhibits }) => asRead !== '' && exhibits.length === 0),
  ),
  need(
    'R13',
    'the interval in which the car was built',
    'Identity',
    ({ particulars }) => particulars.builtFrom === null && particulars.builtTo === null,
  ),
  need('R13', 'the grounds of the build interval', 'Identity', ({ particulars }) => blank(particulars.builtGrounds)),
  need(
    'R18',
    'the reason why a panel of the walk was not looked at: mark it not accessible, or look',
    'Walk-round',
    (record) => record.panels.length === 0 || record.panels.some(({ inspection }) => inspection === 'not inspected'),
  ),
  need('R20', 'a check of every gauge used', 'Coating', (record) =>
    record.spots.some(({ gauge }) => gauge === null || !record.gaugeChecks.some((check) => check.gauge === gauge)),
  ),
  need('R23', 'material and construction of the car', 'Identity', ({ particulars }) => blank(particulars.construction)),
  need('R24', 'the size of every finding that lies at a place', 'Walk-round', (record) =>
    record.findings.some(({ extent, lengthMm }) => extent !== null && extent.shape !== 'point' && lengthMm === null),
  ),
  need('R28', 'an exhibit for every marked or severe finding', 'Walk-round', (record) =>
    record.findings.some(
      ({ severity, exhibits }) => (severity === 'marked' || severity === 'severe') && exhibits.length === 0,
    ),
  ),
  need('R29', 'the uncertainty of every measured size', 'Walk-round', (record) =>
    record.findings.some(({ lengthMm, sizeUncertaintyMm }) => lengthMm !== null && sizeUncertaintyMm === null),
  ),
  need('R38', 'question and both propositions of every claim', 'Identity', (record) =>
    record.claims.some((claim) => blank(claim.question) || blank(claim.ifTrue) || blank(claim.ifNot)),
  ),
  need('R39', 'a strength for every claim with a verdict', 'Identity', (record) =>
    record.claims.some(({ verdict, strength }) => verdict !== 'not settled' && strength === 'not stated'),
  ),
  need('R41', 'what would settle each claim that is not settled', 'Identity', (record) =>
    record.claims.some(({ verdict, wouldSettle }) => verdict === 'not settled' && blank(wouldSettle)),
  ),
  need('R46', 'the assumptions made, or that there are none', 'Identity', (record) =>
    blank(record.commission.assumptions),
  ),
  need('R47', 'a cost range for every planned correction', 'Putting right', (record) =>
    record.corrections.some(({ state, cost }) => state === 'planned' && cost === null),
  ),
  need('R54', 'independence and interests', 'Identity', (record) => blank(record.commission.independence)),
  need('R56', 'who reviewed the report before issue', 'Identity', (record) => blank(record.commission.review)),
]

function need(line: string, missing: string, place: string, isMissing: Requirement['isMissing']): Requirement {
  return { line, missing, place, isMissing }
}

/** Lines whose data the record does not hold yet. A report is issued all the same and prints "not stated". */
export function missingLines(record: RecordView): MissingLine[] {
  return requirements
    .filter((requirement) => requirement.isMissing(record))
    .map(({ line, missing, place }) => ({ line, missing, place }))
}
