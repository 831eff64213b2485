/** The places of the left rail, in order; the figure goes to the place with Alt. */
export const placeList = [
  { id: 'records', name: 'Records', figure: '1' },
  { id: 'identity', name: 'Identity', figure: '2' },
  { id: 'walk-round', name: 'Walk-round', figure: '3' },
  { id: 'coating', name: 'Coating', figure: '4' },
  { id: 'parts', name: 'Parts', figure: '5' },
  { id: 'measuring', name: 'Measuring', figure: '6' },
  { id: 'judgement', name: 'Judgement', figure: '7' },
  { id: 'putting-right', name: 'Putting right', figure: '8' },
  { id: 'report', name: 'Report', figure: '9' },
  { id: 'history', name: 'History', figure: '0' },
] as const

export type PlaceId = (typeof placeList)[number]['id']
