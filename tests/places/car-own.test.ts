import { describe, expect, it } from 'vitest'
import { carFeatures } from '../../electron/sheets/car-features.ts'
import { dimensionList } from '../../electron/sheets/dimension-list.ts'
import { differencesOf } from '../../renderer/places/history/plain-words.ts'
import { dimensionsText, withDimension } from '../../renderer/places/identity/own-dimensions.ts'
import { conditionsOf, featureState, featuresText, withFeature } from '../../shared-types/car-features.ts'
import { metricUnits } from '../../shared-types/units.ts'

const coupe = carFeatures('coupe')

describe('what a car has', () => {
  it('begins as cars of its body usually are, and with whatever was chosen instead', () => {
    expect(conditionsOf(coupe, {})).toEqual(['pillared', 'filler-flap.R', 'fixed-rear-side-window', 'spare-well'])
    expect(conditionsOf(coupe, { pillared: 'absent', 'filler-flap': 'L', sunroof: 'present' })).toEqual([
      'filler-flap.L',
      'fixed-rear-side-window',
      'sunroof',
      'spare-well',
    ])
    expect(conditionsOf(carFeatures('van'), {})).toEqual(['pillared', 'filler-flap.R'])
  })

  it('is read from the conditions of a record and set among them, side by side with those of another body', () => {
    const before = ['side-loading-door.L', 'filler-flap.R', 'pillared']
    expect(featureState(before, 'filler-flap')).toBe('R')
    expect(featureState([...before, 'filler-flap.L'], 'filler-flap')).toBe('present')
    expect(withFeature(before, 'filler-flap', 'L')).toEqual(['side-loading-door.L', 'pillared', 'filler-flap.L'])
    expect(withFeature(before, 'filler-flap', 'absent')).toEqual(['side-loading-door.L', 'pillared'])
    expect(featureState(before, 'sunroof')).toBe('absent')
  })

  it('is said in the chosen English, with the side', () => {
    expect(featuresText(coupe, ['spare-well', 'filler-flap.L'], 'uk')).toBe(
      'Fuel filler flap on the left; spare wheel well',
    )
    expect(featuresText(coupe, ['pillared'], 'us')).toBe('Center pillars up to the roof')
    expect(featuresText(coupe, [], 'uk')).toBe('')
  })
})

describe('what a car measures', () => {
  it('is said with its unit, and only where it was given', () => {
    const { dimensions } = dimensionList('coupe')
    const own = { lengthMm: 4250, screenRakeDegrees: 46.5 }
    expect(dimensionsText(dimensions, own, 'uk', 'mm')).toBe(
      'Overall length 4\u202f250\u202fmm; lean of the windscreen 46.5°',
    )
    expect(dimensionsText(dimensions, own, 'us', 'in')).toBe(
      'Overall length 167.32\u202fin; lean of the windshield 46.5°',
    )
    expect(dimensionsText(dimensions, {}, 'uk', 'mm')).toBe('')
  })

  it('goes back to usual when its field is emptied', () => {
    expect(withDimension({ lengthMm: 4250 }, 'widthMm', 1600)).toEqual({ lengthMm: 4250, widthMm: 1600 })
    expect(withDimension({ lengthMm: 4250, widthMm: 1600 }, 'lengthMm', null)).toEqual({ widthMm: 1600 })
  })

  it('stands in the journal in words, and nothing given is not blank', () => {
    const changed = differencesOf(
      { dimensions: {} },
      { dimensions: { screenRakeDegrees: 45, lengthMm: 4200 } },
      metricUnits,
    )
    expect(changed).toEqual([
      { field: 'dimensions', before: 'none', after: 'screen rake, degrees 45, length, mm 4200' },
    ])
    expect(differencesOf(null, { dimensions: {} }, metricUnits)).toEqual([])
  })
})
