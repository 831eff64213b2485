import { z } from 'zod'
import { once, readList } from '../../sheets/list-file.ts'

const sentence = z.string().min(1)

const fixedTextFile = z.strictObject({
  title: sentence,
  kind: sentence,
  notACertificate: sentence,
  numberForms: sentence,
  unseen: sentence,
  copying: sentence,
  verification: sentence,
  confidentiality: sentence,
  retention: sentence,
  originals: sentence,
  methods: z.array(z.strictObject({ kind: sentence, text: sentence, source: sentence })),
  notDone: z.array(sentence),
  sampling: sentence,
  supplied: sentence,
  competence: sentence,
  strengthNote: sentence,
  strengthBands: z.array(z.strictObject({ ratio: sentence, word: sentence })),
  costNote: sentence,
  certification: z.array(sentence),
  readingGrades: sentence,
})

const glossaryFile = z.strictObject({
  title: sentence,
  entries: z.array(z.strictObject({ word: sentence, meaning: sentence, source: sentence })),
})

/** Sentences that stand in every report, in the program's own words. */
export const fixedTexts = once(() => readList('fixed-texts.json', fixedTextFile, 'report'))

/** Words of the report with their meaning and source, in alphabetical order. */
export const glossary = once(() => readList('glossary.json', glossaryFile, 'report'))
