import { z } from 'zod'
import { type PracticeRange, practiceRanges, type SubstrateReach, substrateReach } from '../../shared-types/coating.ts'
import { once, readList } from './list-file.ts'

const readRanges = once(() => readList('practice-ranges.json', practiceRanges, 'coating'))

/** Ranges of thickness with names of the trade, thin to thick, each with its author and date. */
export const classRanges = (): readonly PracticeRange[] => readRanges()

const readSubstrates = once(() => readList('substrates.json', z.array(substrateReach), 'coating'))

/** What a gauge of each principle shows over each substrate, with its source. */
export const substrateTable = (): readonly SubstrateReach[] => readSubstrates()
