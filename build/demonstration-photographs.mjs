#!/usr/bin/env node
// Draws the photographs of the demonstration car and writes them, with EXIF, into resources/demonstration/photographs.
// They are renderings, not pictures of a car. Run again only when a scene changes: the files are kept in the project.
// With names as arguments only those are drawn: node build/demonstration-photographs.mjs sill-lead wing-bolts
import { mkdir, stat } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import { details } from './demonstration-photographs.details.mjs'
import { measured } from './demonstration-photographs.measured.mjs'
import { scenes } from './demonstration-photographs.scenes.mjs'
import { underside } from './demonstration-photographs.underside.mjs'

const all = { ...scenes, ...details, ...underside, ...measured }

/** Local time of each picture, how the camera was held (EXIF orientation) and its focal length in millimetres. */
const taken = {
  'whole-car': ['2026:05:14 09:18:02', 1, 50],
  odometer: ['2026:05:14 09:19:04', 1, 85],
  'chassis-plate': ['2026:05:14 09:22:15', 1, 85],
  'body-tag': ['2026:05:14 09:23:20', 6, 85],
  'engine-number': ['2026:05:14 09:24:11', 1, 85],
  'casting-date': ['2026:05:14 09:25:16', 1, 85],
  'wing-bolts': ['2026:05:14 09:39:10', 3, 50],
  'wing-lip': ['2026:05:14 09:40:08', 1, 50],
  'sill-lead': ['2026:05:14 09:55:02', 1, 50],
  'tail-hole': ['2026:05:14 10:12:31', 1, 50],
  'glass-overspray': ['2026:05:14 10:22:35', 1, 50],
  'arch-filler': ['2026:05:14 10:29:14', 8, 35],
  'sill-filler': ['2026:05:14 10:39:18', 1, 50],
  'badge-holes': ['2026:05:14 10:54:05', 1, 85],
  'flitch-ripples': ['2026:05:14 11:41:36', 1, 35],
  'floor-patch': ['2026:05:14 11:44:42', 3, 35],
  'brake-hose': ['2026:05:14 13:11:02', 6, 85],
  'gearbox-number': ['2026:05:14 13:17:49', 1, 85],
  'wheel-studs': ['2026:05:14 13:28:33', 1, 50],
  'wiper-spindles': ['2026:05:14 13:41:10', 1, 50],
  'brake-hose-after': ['2026:06:02 14:00:36', 6, 85],
}

/** Turn, in degrees, that lays the upright picture as the sensor saw it (CIPA DC-008, orientation). */
const laidDown = { 1: 0, 3: 180, 6: 270, 8: 90 }

const folder = fileURLToPath(new URL('../resources/demonstration/photographs/', import.meta.url))
await mkdir(folder, { recursive: true })
const wanted = process.argv.length > 2 ? process.argv.slice(2) : Object.keys(all)
for (const name of wanted) {
  const [time, orientation, focal] = taken[name]
  const upright = await (await all[name]()).png().toBuffer()
  const file = `${folder}${name}.jpg`
  await sharp(upright)
    .rotate(laidDown[orientation])
    .blur(0.6)
    .withExif({
      IFD0: { DateTime: time, ImageDescription: 'Rendered for the demonstration' },
      IFD2: { DateTimeOriginal: time, OffsetTimeOriginal: '+01:00', OffsetTime: '+01:00', FocalLength: `${focal}/1` },
    })
    .withMetadata({ orientation })
    .jpeg({ quality: 62, mozjpeg: true })
    .toFile(file)
  console.log(`${name}.jpg  ${Math.round((await stat(file)).size / 1024)} kB`)
}
