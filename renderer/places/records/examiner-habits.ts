import type { z } from 'zod'
import { commission } from '../../../shared-types/car.ts'

/** What belongs to the examiner and not to the car: it stands ready in the next record begun on this machine. */
export const examinerHabits = commission.pick({
  examiner: true,
  examinerRole: true,
  examinerContact: true,
  examinerCompetence: true,
  independence: true,
  names: true,
  lengthUnit: true,
  coatingUnit: true,
  currency: true,
  retentionYears: true,
})
export type ExaminerHabits = z.infer<typeof examinerHabits>

const STORED = 'witnessmark.examiner'

const nobodyYet: ExaminerHabits = {
  examiner: '',
  examinerRole: '',
  examinerContact: '',
  examinerCompetence: '',
  independence: '',
  names: 'uk',
  lengthUnit: 'mm',
  coatingUnit: 'µm',
  currency: 'GBP',
  retentionYears: 10,
}

/** The habits of whoever began the last record here; empty before the first. */
export function rememberedHabits(): ExaminerHabits {
  const stored = localStorage.getItem(STORED)
  if (stored === null) return nobodyYet
  try {
    const read = examinerHabits.safeParse(JSON.parse(stored))
    return read.success ? read.data : nobodyYet
  } catch {
    return nobodyYet
  }
}

/** Remembers them on this machine; nothing of the car or the client goes along. */
export function rememberHabits(habits: ExaminerHabits): void {
  const { examiner, examinerRole, examinerContact, examinerCompetence, independence } = habits
  const { names, lengthUnit, coatingUnit, currency, retentionYears } = habits
  const own = { examiner, examinerRole, examinerContact, examinerCompetence, independence }
  localStorage.setItem(STORED, JSON.stringify({ ...own, names, lengthUnit, coatingUnit, currency, retentionYears }))
}
