/** UAX #14 line breaking; the library ships no types. */
declare module 'linebreak' {
  class LineBreaker {
    constructor(text: string)
    nextBreak(): { readonly position: number; readonly required: boolean } | null
  }
  export = LineBreaker
}
