/** Asks, and takes the answer or what was thrown instead where `isWanted` still says yes by then. */
type Asking = (isWanted: () => boolean) => Promise<void>

/**
 * Asks one question after another. Of those that come while one is under way the last alone is asked, and an answer
 * that a later question waits behind is not taken: neither its value nor its problem.
 */
export class LatestQuestion {
  #next: Asking | null = null
  #busy = false

  ask<Answer>(
    question: () => Promise<Answer>,
    take: (answer: Answer) => void,
    refuse: (thrown: unknown) => void,
  ): void {
    this.#run((isWanted) =>
      question().then(
        (answer) => {
          if (isWanted()) take(answer)
        },
        (thrown: unknown) => {
          if (isWanted()) refuse(thrown)
        },
      ),
    )
  }

  /** What has not begun is not asked any more. */
  forget(): void {
    this.#next = null
  }

  #run(asking: Asking): void {
    if (this.#busy) {
      this.#next = asking
      return
    }
    this.#busy = true
    void asking(() => this.#next === null).finally(() => {
      const next = this.#next
      this.#next = null
      this.#busy = false
      if (next !== null) this.#run(next)
    })
  }
}
