import { type PracticeRange, practiceRanges } from '../../shared-types/coating.ts'
import { once, readList } from './list-file.ts'

const readRanges = once(() => readList('practice-ranges.json', practiceRanges, 'coating'))

/** Ranges of thickness with names of the trade, thin to thick, each with its author and date. */
export const classRanges = (): readonly PracticeRange[] => readRanges()
