import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'

/** How long a token in an address may wait to be used. */
export const TOKEN_LIFETIME_MS = 120_000

const digest = (secret: string): Buffer => createHash('sha256').update(secret).digest()

/** Who may use the page: tokens that open it once and soon, and the secrets they were exchanged for. */
export class EntryTokens {
  private readonly waiting: { readonly digest: Buffer; readonly until: number }[] = []
  private readonly admitted: Buffer[] = []
  private readonly now: () => number

  /** `now` in milliseconds of any clock that only goes forward. */
  constructor(now: () => number = () => performance.now()) {
    this.now = now
  }

  /** A fresh token of 256 random bits, good once within its lifetime. */
  issue(): string {
    const token = randomBytes(32).toString('base64url')
    this.waiting.push({ digest: digest(token), until: this.now() + TOKEN_LIFETIME_MS })
    return token
  }

  /** Exchanges a token for the secret a cookie will carry; null when it is unknown, used or too old. */
  exchange(token: string): string | null {
    const given = digest(token)
    const place = this.waiting.findIndex((one) => timingSafeEqual(one.digest, given))
    const [found] = place < 0 ? [] : this.waiting.splice(place, 1)
    if (found === undefined || this.now() > found.until) return null
    const secret = randomBytes(32).toString('base64url')
    this.admitted.push(digest(secret))
    return secret
  }

  /** True when this secret was given for a token. */
  admits(secret: string): boolean {
    const given = digest(secret)
    return this.admitted.some((one) => timingSafeEqual(one, given))
  }
}
