/** Sent with everything: nothing is stored, guessed, framed by strangers or told onwards. */
const always = {
  'cache-control': 'no-store',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), microphone=(), geolocation=(), usb=(), serial=(), payment=()',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'SAMEORIGIN',
} as const

/**
 * Policy of the page: everything from the program itself, no inline script, no foreign anything. The nonce admits the one
 * style element the control library writes for touch.
 */
export const pagePolicy = (nonce: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "frame-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ')

/** Policy of bytes that are no page of ours: whatever they hold, it runs nothing and reaches nothing. */
const bytesPolicy = "default-src 'none'; frame-ancestors 'self'; sandbox"
/** The program's own PDF files may be framed by its page; a viewer needs its own styles. */
const documentPolicy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'; frame-ancestors 'self'"

/** Headers of an answer of a kind. */
export function headersFor(kind: 'bytes' | 'document', more: Record<string, string> = {}): Headers {
  const policy = kind === 'document' ? documentPolicy : bytesPolicy
  return new Headers({ ...always, 'content-security-policy': policy, ...more })
}

/** Headers of the page itself. */
export const headersOfPage = (nonce: string): Headers =>
  new Headers({ ...always, 'content-security-policy': pagePolicy(nonce), 'content-type': 'text/html; charset=utf-8' })

/** RFC 6266 with RFC 8187 encoding: a name of any letters, safe in a header. */
export function disposition(kind: 'inline' | 'attachment', fileName: string): string {
  const plain = fileName.replace(/[^\w. -]/g, '_').slice(0, 120)
  const wellFormed = Buffer.from(fileName.slice(0, 200), 'utf8').toString('utf8')
  const encoded = encodeURIComponent(wellFormed).replace(/['()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`)
  return `${kind}; filename="${plain}"; filename*=UTF-8''${encoded}`
}
