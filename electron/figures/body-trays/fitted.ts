/** Whether a condition of the record holds on a side: it may stand for both sides or name one. */
export const fitted = (conditions: ReadonlySet<string>, name: string, side: 'L' | 'R' | null): boolean =>
  conditions.has(name) || (side !== null && conditions.has(`${name}.${side}`))
