/**
 * The sRGB colour space as an ICC profile (ICC.1:2001-04, version 2.4, matrix and tone curve), computed here from the
 * published definition, so that no file of another's is shipped. Primaries and curve: IEC 61966-2-1:1999; adapted to
 * D50 by the linear Bradford transform. About 2.6 kB.
 */
export function srgbProfile(): Uint8Array {
  const text = Buffer.from('sRGB, computed from IEC 61966-2-1\0', 'latin1')
  const description = Buffer.concat([
    signature('desc'),
    Buffer.alloc(4),
    unsigned(text.length),
    text,
    Buffer.alloc(8 + 3 + 67),
  ])
  const copyright = Buffer.concat([signature('text'), Buffer.alloc(4), Buffer.from('No copyright claimed\0', 'latin1')])
  const curve = toneCurve()
  const tags: readonly [string, Buffer][] = [
    ['desc', description],
    ['cprt', copyright],
    ['wtpt', xyz(0.9505, 1, 1.0891)],
    // Columns of the D50-adapted matrix, as the sRGB primaries give by Bradford.
    ['rXYZ', xyz(0.436066, 0.222488, 0.013916)],
    ['gXYZ', xyz(0.385147, 0.716873, 0.097076)],
    ['bXYZ', xyz(0.143066, 0.060608, 0.714096)],
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ]
  return assemble(tags)
}

const signature = (text: string): Buffer => Buffer.from(text, 'latin1')

function unsigned(value: number): Buffer {
  const bytes = Buffer.alloc(4)
  bytes.writeUInt32BE(value)
  return bytes
}

const fixed = (value: number): Buffer => unsigned(Math.round(value * 65536))

const xyz = (x: number, y: number, z: number): Buffer =>
  Buffer.concat([signature('XYZ '), Buffer.alloc(4), fixed(x), fixed(y), fixed(z)])

function toneCurve(): Buffer {
  const steps = 1024
  const bytes = Buffer.alloc(12 + steps * 2)
  bytes.write('curv', 0, 'latin1')
  bytes.writeUInt32BE(steps, 8)
  for (let step = 0; step < steps; step++) {
    const encoded = step / (steps - 1)
    const linear = encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4
    bytes.writeUInt16BE(Math.round(linear * 65535), 12 + step * 2)
  }
  return bytes
}

function assemble(tags: readonly [string, Buffer][]): Buffer {
  const tableLength = 4 + tags.length * 12
  const bodies: Buffer[] = []
  const places = new Map<Buffer, number>()
  let at = 128 + tableLength
  for (const [, body] of tags) {
    if (places.has(body)) continue
    const padded = Buffer.concat([body, Buffer.alloc((4 - (body.length % 4)) % 4)])
    places.set(body, at)
    bodies.push(padded)
    at += padded.length
  }
  const table = tags.map(([name, body]) =>
    Buffer.concat([signature(name), unsigned(places.get(body) ?? 0), unsigned(body.length)]),
  )
  const head = Buffer.alloc(128)
  head.writeUInt32BE(at, 0)
  head.writeUInt32BE(0x02400000, 8)
  head.write('mntrRGB XYZ ', 12, 'latin1')
  // A fixed date, 1 January 2026, so that the same report is the same bytes.
  for (const [index, part] of [2026, 1, 1, 0, 0, 0].entries()) head.writeUInt16BE(part, 24 + index * 2)
  head.write('acsp', 36, 'latin1')
  // Illuminant of the connection space, D50.
  for (const [index, value] of [0.9642, 1, 0.8249].entries()) fixed(value).copy(head, 68 + index * 4)
  return Buffer.concat([head, unsigned(tags.length), ...table, ...bodies])
}
