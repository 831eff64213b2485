/** One thing to be known before a reading is taken: what the gauge can read there, or why it cannot. */
export interface PlaceLine {
  readonly words: string
  /** Publication it rests on, or that it is common practice. */
  readonly source: string
  /** `cannot` where a number would say nothing, `care` where it needs care, `plain` where it can be read. */
  readonly weight: 'plain' | 'care' | 'cannot'
}
