import { createHash } from 'node:crypto'
import type { EditionData, PictureSize, ReportContent } from '../../electron/report/report-content.ts'
import { cautions } from '../../electron/sheets/cautions.ts'
import { panelList } from '../../electron/sheets/panel-list.ts'
import { partGroups, partsList } from '../../electron/sheets/parts-list.ts'
import { datedThingsOf, timeLineFrom } from '../../electron/use-cases/time-line.ts'
import type { Exhibit } from '../../shared-types/exhibit.ts'
import type { Finding } from '../../shared-types/finding.ts'
import type { AreaJudgement, Judgement, ShareRange } from '../../shared-types/judgement.ts'
import type { PanelState } from '../../shared-types/panel.ts'
import type { RecordView } from '../../shared-types/record.ts'
import { marksFixture, planFixture } from './plan-fixture.ts'

const at = '2026-11-09T10:00:00.000Z'
const hash = (text: string): string => createHash('sha256').update(text).digest('hex')

export const panelFixture = (panelId: string, more: Partial<PanelState>): PanelState => ({
  panelId,
  inspection: 'inspected',
  reason: '',
  metal: 'original metal',
  paint: 'refinished',
  nothingFound: false,
  backSeen: false,
  magnetVoid: false,
  note: '',
  changedAt: at,
  ...more,
})

export const findingFixture = (number: number, panelId: string, more: Partial<Finding> = {}): Finding => ({
  number,
  panelId,
  kind: 'corrosion',
  layer: 'skin',
  extent: null,
  lengthMm: 310,
  widthMm: 25,
  depthMm: null,
  sizeUncertaintyMm: 2,
  severity: 'marked',
  urgency: 'within a year',
  action: 'repair',
  learned: 'measured',
  learnedFrom: '',
  grade: null,
  suspectedCause: 'water held behind the arch',
  dangerous: false,
  exhibits: [1],
  note: 'Edge rusted through in three places along the flange.',
  ...more,
})

export const exhibitFixture = (number: number, more: Partial<Exhibit> = {}): Exhibit => ({
  number,
  kind: 'photograph',
  caption: `Photograph ${number}: the seam, raking light from the left.`,
  madeBy: 'The surveyor',
  place: 'in the barn',
  panelId: 'front-side.L',
  view: 'left',
  at: { u: 600, v: -500 },
  inReport: true,
  measurement: null,
  picked: null,
  addedAt: at,
  photograph: {
    sha256: hash(`photograph ${number}`),
    fileName: `photograph-${number}.jpg`,
    mediaType: 'image/jpeg',
    byteLength: 1000,
    widthPx: 1200,
    heightPx: 800,
    orientation: 1,
    takenAt: '2026-11-09T10:42:16',
    takenOffset: '+01:00',
    camera: 'test camera',
    focalLengthMm: 35,
    latitude: 51.123456,
    longitude: -1.654321,
  },
  ...more,
})

export function recordFixture(more: Partial<RecordView> = {}): RecordView {
  return {
    path: 'test.wmk',
    readOnly: false,
    particulars: {
      title: 'Sedge coupé, 1960',
      maker: 'Brackwater Motors, Nethercott',
      line: 'Sedge',
      body: 'coupe',
      steering: 'right',
      marketOfFirstSale: 'home market',
      colourNow: 'pale grey',
      construction: 'Unitary steel body; front wings bolted on.',
      builtFrom: '1960-01-11',
      builtTo: '1960-03-30',
      builtGrounds: 'Body tag and two running changes.',
      history: 'Off the road since 1987, as told.',
      conditions: [],
      dimensions: {},
    },
    commission: {
      recordNumber: 'WM 26-0117',
      examiner: 'The surveyor',
      examinerRole: 'independent surveyor of car bodies',
      examinerContact: 'The survey office, Nethercott',
      examinerCompetence: 'Car bodies since 2009.',
      client: 'The client, a restorer',
      otherUsers: 'the client’s insurer',
      notForReliance: 'any later buyer',
      intendedUse: 'purchase',
      question: 'Is the car what the seller says?',
      titleAsTold: 'with the seller',
      titleVerified: false,
      effectiveDate: '2026-11-10',
      independence: 'No interest in the car or its price.',
      helpers: 'none',
      review: 'Read again by the surveyor on the next day.',
      retentionYears: 10,
      assumptions: 'That the papers shown belong to this car.',
      currency: 'GBP',
      names: 'uk',
      lengthUnit: 'mm',
      coatingUnit: 'µm',
      level: 'with underneath',
      positionsInReports: false,
    },
    visits: [
      {
        number: 1,
        beganAt: '2026-11-09T09:00:00.000Z',
        endedAt: '2026-11-09T16:30:00.000Z',
        place: 'Hallow Barn',
        light: 'daylight and torch',
        weather: 'dry',
        surface: 'dry',
        support: 'on stands',
        temperatureC: 9,
        present: 'the seller',
        odometer: '43 000 miles shown',
        stateOnArrival: 'washed the day before',
      },
    ],
    consents: [
      { step: 'borescope', given: true, by: 'the owner', on: '2026-11-08', done: 'Left sill, through the drain hole.' },
    ],
    carNumbers: [
      {
        number: 1,
        kind: 'chassis number',
        where: 'plate on the bulkhead',
        howRead: 'read character by character',
        asRead: 'B2 5519',
        onPaper: 'B25519',
        paper: 'registration document',
        exhibits: [1],
        note: '',
      },
      {
        number: 2,
        kind: 'engine number',
        where: 'block, left',
        howRead: 'from a photograph',
        asRead: 'K 41 7726',
        onPaper: 'K 40 1187',
        paper: 'guarantee slip',
        exhibits: [2],
        note: '',
      },
      {
        number: 3,
        kind: 'gearbox number',
        where: 'case',
        howRead: 'not found',
        asRead: '',
        onPaper: '',
        paper: '',
        exhibits: [],
        note: '',
      },
      {
        number: 4,
        kind: 'body tag',
        where: '',
        howRead: 'not looked for',
        asRead: '',
        onPaper: '',
        paper: '',
        exhibits: [],
        note: '',
      },
    ],
    panels: [
      panelFixture('front-side.L', { metal: 'replacement panel' }),
      panelFixture('front-door.L', { metal: 'filler over metal' }),
      panelFixture('roof-skin', { nothingFound: true, paint: 'factory finish' }),
      panelFixture('front-side.R', {
        inspection: 'not accessible',
        reason: 'against the wall',
        metal: 'not inspected',
        paint: 'not inspected',
      }),
    ],
    findings: [
      findingFixture(1, 'front-side.L', {
        extent: {
          view: 'left',
          shape: 'area',
          points: [
            { u: 300, v: -500 },
            { u: 700, v: -500 },
            { u: 700, v: -300 },
            { u: 300, v: -300 },
          ],
        },
        grade: { standard: 'ISO 4628-3', affectedPercent: 1, basis: 'estimated' },
      }),
      findingFixture(2, 'front-door.L', {
        kind: 'filler',
        severity: 'slight',
        dangerous: true,
        learned: 'told',
        learnedFrom: 'the seller',
      }),
    ],
    spots: [
      {
        number: 1,
        panelId: 'front-side.L',
        view: 'left',
        at: { u: 500, v: -600 },
        where: 'above the arch',
        values: [{ kind: 'value', um: 160 }, { kind: 'more than', um: 2000 }, { kind: 'no reading' }],
        enteredIn: 'µm',
        gauge: 1,
        mode: 'magnetic',
        substrate: 'steel',
        readAt: at,
        exhibits: [],
        note: '',
      },
    ],
    gauges: [
      {
        number: 1,
        name: 'gauge of the survey office',
        serial: '0042',
        principle: 'magnetic induction',
        rangeUm: 2000,
        errorUm: 2,
        errorPercent: 3,
        probeDiameterMm: 8,
        certifiedOn: '2026-02-01',
        certificate: 'T 17',
      },
    ],
    gaugeChecks: [{ number: 1, gauge: 1, when: 'before', at, shimUm: 125, readUm: [126, 124, 125], note: '' }],
    weights: [],
    parts: [
      {
        partId: 'engine-block',
        state: 'right type, wrong date',
        numberAsRead: 'K 41 7726',
        dateAsRead: 'F 14 2',
        marks: '',
        expected: 'cast by March 1960',
        learned: 'seen',
        exhibits: [2],
        countsWith: null,
        fastening: null,
        note: '',
      },
    ],
    claims: [
      {
        number: 1,
        words: 'matching engine',
        who: 'the seller',
        kind: 'seller',
        on: '2026-11-03',
        where: 'advertisement',
        repeats: null,
        question: 'Is the engine the one the car left the works with?',
        ifTrue: 'The engine was fitted at the works.',
        ifNot: 'The engine came later.',
        takenAsGiven: 'built by 30 March 1960',
        verdict: 'contradicted',
        strength: 'strong',
        reasons: 'Cast two years after the car was built.',
        setAside: 'That the date is 1952: the type began in 1956.',
        wouldSettle: 'The build card.',
        asserts: [],
        reliability: null,
        findings: [1],
        exhibits: [2],
      },
    ],
    sheets: [],
    observations: [],
    corrections: [
      {
        number: 1,
        what: 'Cut out and replace the flange',
        group: 'metal',
        findings: [1],
        state: 'planned',
        cost: { low: 400, likely: 700, high: 1400, basis: 'two days of a welder', pricedOn: '2026-10-01' },
        by: '',
        materials: '',
        doneOn: null,
        removedPartsKept: '',
        reversible: 'no',
        verifiedBy: '',
        verifiedOn: null,
        exhibitsBefore: [1],
        exhibitsAfter: [],
        findingsAfter: [],
        coating: null,
        note: '',
      },
      {
        number: 2,
        what: 'New hose to the left front brake',
        group: 'safety and legal',
        findings: [2],
        state: 'verified',
        cost: null,
        by: 'the owner',
        materials: 'hose',
        doneOn: '2026-11-12',
        removedPartsKept: 'old hose, labelled',
        reversible: 'yes',
        verifiedBy: 'the surveyor',
        verifiedOn: '2026-11-13',
        exhibitsBefore: [1],
        exhibitsAfter: [3],
        findingsAfter: [],
        coating: null,
        note: '',
      },
    ],
    exhibits: [
      exhibitFixture(1),
      exhibitFixture(2, { panelId: null, view: null, at: null }),
      exhibitFixture(3),
      exhibitFixture(4, {
        kind: 'measurement',
        photograph: null,
        measurement: {
          what: 'stud circle',
          value: 107.9,
          unit: 'mm',
          uncertainty: 0.4,
          method: 'three chords',
          instrument: 'calliper',
        },
      }),
    ],
    editions: [],
    journalNumber: 41,
    journalHash: hash('journal'),
    undoState: { undo: null, redo: null },
    ...more,
  }
}

const range = (id: string, label: string, low: number, high: number): ShareRange => ({
  id,
  label,
  basis: 'of 9.86 m²',
  lowPercent: low,
  highPercent: high,
  seenYesPercent: low,
  notSeenPercent: high - low,
  seenNoPercent: 100 - high,
  because: [
    {
      text: 'The left front wing is a replacement panel.',
      sort: 'seen',
      references: [
        { kind: 'finding', key: '1' },
        { kind: 'exhibit', key: '1' },
      ],
      source: null,
    },
  ],
})

const area = (id: string, label: string): AreaJudgement => ({
  id,
  label,
  areaM2: 9.86,
  seenAreaM2: 3.2,
  panels: 99,
  panelsSeen: 3,
  metal: [
    { state: 'original metal', lowPercent: 20, highPercent: 71, areaM2: 2 },
    { state: 'replacement panel', lowPercent: 8, highPercent: 60, areaM2: 0.8 },
  ],
  paint: [{ state: 'refinished', lowPercent: 12, highPercent: 80, areaM2: 1.2 }],
  originalMetal: range(`${id}-metal`, label, 20, 71),
  factoryPaint: range(`${id}-paint`, label, 11.4, 63.2),
})

export const judgementFixture: Judgement = {
  coverage: [
    { layer: 'outer', seen: 3, notAccessible: 1, walked: 30, all: 30 },
    { layer: 'inner', seen: 0, notAccessible: 0, walked: 40, all: 40 },
    { layer: 'under', seen: 0, notAccessible: 0, walked: 20, all: 20 },
  ],
  whole: area('whole', 'Whole body'),
  areas: [area('left', 'Left side'), area('right', 'Right side')],
  panels: [],
  parts: [{ ...range('parts', 'Parts', 2, 96), basis: '1 of 52 parts seen' }],
  openQuestions: [
    { text: 'Is the sill sound inside?', references: [], wouldSettle: 'A borescope through the rear drain.' },
  ],
  lookNext: [{ panelId: 'front-side.R', what: 'Right front wing', why: 'largest panel not seen' }],
  wouldNarrow: [
    {
      reference: { kind: 'panel', key: 'front-side.R' },
      label: 'Right front wing',
      how: 'not looked at yet',
      narrows: [
        {
          range: 'original metal',
          points: 9,
          now: { lowPercent: 40, highPercent: 70 },
          ifYes: { lowPercent: 49, highPercent: 70 },
          ifNo: { lowPercent: 40, highPercent: 61 },
        },
      ],
      mostPoints: 9,
    },
  ],
  weights: 'Weights: a panel by its area, a part by one.',
  weightsSet: [],
  unweighed: null,
}

export const editionFixture: EditionData = {
  number: 1,
  reportNumber: 'WM 26-0117-1',
  issuedAt: '2026-11-17T12:00:00.000Z',
  reason: '',
  previous: null,
  changes: [],
}

/** A grey gradient with a line, as the importer would render it. */
export async function pictureFixture(widthPx: number, heightPx: number): Promise<Uint8Array> {
  const { default: sharp } = await import('sharp')
  return sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: { r: 120, g: 124, b: 118 } } })
    .jpeg({ quality: 80 })
    .toBuffer()
}

export function contentFixture(record: RecordView, more: Partial<ReportContent> = {}): ReportContent {
  const panels = panelList(record.particulars.body, record.commission.level, record.particulars.conditions)
  const parts = partsList()
  const sizes = new Map<number, PictureSize>()
  for (const { number, photograph } of record.exhibits) if (photograph !== null) sizes.set(number, photograph)
  return {
    record,
    judgement: judgementFixture,
    identity: null,
    numberFormat: { applies: 'The format of 17 characters does not apply.', numbers: [] },
    timeLine: timeLineFrom(record, datedThingsOf(record, [], null), null),
    partsJudged: null,
    coatingMaps: [],
    coatingCuts: [],
    coatingChanges: [],
    measurements: [],
    photographMeasures: [],
    samples: [],
    coatingCar: {
      rows: [],
      ticks: [],
      films: [],
      sides: [],
      seams: [],
      marked: [],
      cannotTell: '',
      textAlternative: '',
    },
    panels,
    parts,
    partGroups: partGroups(),
    cautions: cautions(),
    plan: planFixture,
    marks: {
      outside: marksFixture(record, panels.panels, 'outside'),
      under: marksFixture(record, panels.panels, 'under'),
    },
    edition: editionFixture,
    paper: 'A4',
    pictureSizes: async () => sizes,
    picture: async (number) => {
      const { widthPx, heightPx } = sizes.get(number) ?? { widthPx: 1, heightPx: 1 }
      return pictureFixture(widthPx, heightPx)
    },
    ...more,
  }
}
