import { coatingFieldAnswer, coatingFieldInput } from './coating.ts'
import { coatingChangeAnswer, coatingChangeInput } from './coating-change.ts'
import { coatingSectionAnswer, coatingSectionInput } from './coating-section.ts'

export const coating = {
  about: 'Filler of one panel from its readings: area, volume, maps with intervals, and where to read next.',
  input: coatingFieldInput,
  output: coatingFieldAnswer,
}

export const coatingChange = {
  about: 'Filler of one panel before and after work on it, with the difference of area and volume and its interval.',
  input: coatingChangeInput,
  output: coatingChangeAnswer,
}

export const coatingSection = {
  about: 'Thickness along a straight line across one panel, with its band, from the readings the panel’s map rests on.',
  input: coatingSectionInput,
  output: coatingSectionAnswer,
}
