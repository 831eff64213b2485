/** Conditions of the Sedge coupé as it was built. */
export const sedge = [
  'pillared',
  'separate-lamp-housing',
  'fixed-rear-side-window',
  'filler-flap.R',
  'front-spring-tower',
  'spare-well',
  'outriggers',
  'floor-crossmember',
]
