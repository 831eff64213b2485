import { format } from 'date-fns'
import type { Commission, Consent, Particulars, VisitDraft } from '../../../shared-types/car.ts'
import type { FeatureState } from '../../../shared-types/car-features.ts'
import { type InspectionLevel, type IntrusiveStep, intrusiveStep } from '../../../shared-types/words.ts'
import type { ExaminerHabits } from './examiner-habits.ts'

/** Everything the beginning of the job asks for, as it stands in the form. */
export interface NewRecord {
  readonly particulars: Particulars
  readonly commission: Commission
  readonly visit: VisitDraft
  /** What was chosen of what only some cars have; where nothing was, a car has what its body usually has. */
  readonly features: Readonly<Record<string, FeatureState>>
  /** Steps the owner has given leave for. */
  readonly leave: readonly IntrusiveStep[]
  readonly leaveBy: string
}

/** An empty form once the level is chosen. Title and examiner are the only lines that still must be written. */
export function newRecord(level: InspectionLevel, now: Date, examiner: ExaminerHabits): NewRecord {
  return {
    particulars: {
      title: '',
      maker: '',
      line: '',
      body: 'coupe',
      steering: examiner.names === 'uk' ? 'right' : 'left',
      marketOfFirstSale: '',
      colourNow: '',
      construction: '',
      builtFrom: null,
      builtTo: null,
      builtGrounds: '',
      history: '',
      conditions: [],
      dimensions: {},
    },
    commission: {
      ...examiner,
      recordNumber: `W ${format(now, 'yyyy-MMdd-HHmm')}`,
      client: '',
      otherUsers: '',
      notForReliance: 'Nobody else without the examiner’s written leave',
      intendedUse: 'condition report',
      question: '',
      titleAsTold: '',
      titleVerified: false,
      effectiveDate: format(now, 'yyyy-MM-dd'),
      helpers: '',
      review: '',
      assumptions: '',
      level,
      positionsInReports: false,
    },
    visit: {
      beganAt: now.toISOString(),
      endedAt: null,
      place: '',
      light: 'daylight',
      weather: '',
      surface: 'dry',
      support: level === 'with underneath' ? 'on a lift' : 'on the ground',
      temperatureC: null,
      present: '',
      odometer: '',
      stateOnArrival: '',
    },
    features: {},
    leave: [],
    leaveBy: '',
  }
}

/** A file name any system takes, made from the title and the record number. */
export function fileNameOf(form: NewRecord): string {
  const said = `${form.particulars.title.trim()} ${form.commission.recordNumber.trim()}`
  return said
    .replace(/[\\/:*?"<>|\p{Cc}]/gu, '-')
    .replace(/\s+/gu, ' ')
    .replace(/^[.\s]+|[.\s]+$/gu, '')
    .slice(0, 110)
}

/** One consent for each of the nine steps; a step without leave is recorded as not given, never left out. */
export function consentsOf(form: NewRecord): readonly Consent[] {
  const day = form.visit.beganAt.slice(0, 10)
  return intrusiveStep.options.map((step) => {
    const given = form.leave.includes(step)
    return { step, given, by: given ? form.leaveBy : '', on: given ? day : null, done: '' }
  })
}
