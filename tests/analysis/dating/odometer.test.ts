import { expect, it } from 'vitest'
import { odometerOrder } from '../../../electron/analysis/dating/odometer.ts'

const at = (id: string, from: string, value: number, unit: 'km' | 'mile' = 'mile', to = from) => ({
  id,
  when: { from, to },
  value,
  unit,
  label: id,
})

it('a counter of five figures may have rolled over', () => {
  const { runsBack } = odometerOrder({
    figures: 5,
    readings: [at('b', '1980-05-01', 3200), at('a', '1975-05-01', 98_000)],
  })
  expect(runsBack).toMatchObject([{ earlier: 'a', later: 'b', byDistance: 94_800, unit: 'mile' }])
  expect(runsBack[0]?.explanations[0]).toContain('5200 mile')
  expect(JSON.stringify(runsBack)).not.toMatch(/fraud|tamper|clocked/i)
})
it('says nothing of readings whose days overlap', () => {
  const readings = [at('a', '1975-01-01', 900, 'mile', '1975-12-31'), at('b', '1975-06-01', 800)]
  expect(odometerOrder({ figures: null, readings })).toMatchObject({ runsBack: [], notOrdered: 1 })
})
it('50,000 km is less than 40,000 miles: exactly 1.609344 km to the mile', () => {
  const { runsBack } = odometerOrder({
    figures: 6,
    readings: [at('a', '1975-01-01', 40_000), at('b', '1976-01-01', 50_000, 'km')],
  })
  expect(runsBack[0]?.byDistance).toBeCloseTo(14_373.76, 6)
  expect(runsBack[0]?.explanations.join()).toContain('units differ')
})
it('a smaller later reading that fits in the other unit says so', () => {
  const { runsBack } = odometerOrder({
    figures: 6,
    readings: [at('a', '1975-01-01', 50_000), at('b', '1976-01-01', 40_000)],
  })
  expect(runsBack[0]?.explanations.join()).toContain('earlier reading would fit if it is in kilometres')
})
it('good order is not called right', () => {
  const { words } = odometerOrder({ figures: 5, readings: [at('a', '1975-01-01', 1)] })
  expect(words).toContain('does not show that the distance is right')
})
it('refuses an interval that ends before it begins, with its cure', () => {
  const readings = [at('a', '1975-01-02', 1, 'km', '1975-01-01')]
  expect(() => odometerOrder({ figures: 5, readings })).toThrow(/exchange/)
})
