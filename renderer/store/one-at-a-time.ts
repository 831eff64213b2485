/** Runs what it is given one after the other: of what comes while one is under way, the last alone. */
export class OneAtATime {
  #next: (() => Promise<void>) | null = null
  #busy = false

  run(task: () => Promise<void>): void {
    if (this.#busy) {
      this.#next = task
      return
    }
    this.#busy = true
    void task().finally(() => {
      const next = this.#next
      this.#next = null
      this.#busy = false
      if (next !== null) this.run(next)
    })
  }

  /** What has not begun is not wanted any more. */
  forget(): void {
    this.#next = null
  }
}
