import exifr from 'exifr'
import type { Photograph } from '../../shared-types/exhibit.ts'

/** What EXIF (CIPA DC-008) tells of a photograph, as the camera wrote it. */
export type CameraWords = Pick<
  Photograph,
  'takenAt' | 'takenOffset' | 'camera' | 'focalLengthMm' | 'latitude' | 'longitude'
>

const silent: CameraWords = {
  takenAt: null,
  takenOffset: null,
  camera: '',
  focalLengthMm: null,
  latitude: null,
  longitude: null,
}

const text = (value: unknown): string => (typeof value === 'string' ? value.replace(/[\p{Cc}\s]+/gu, ' ').trim() : '')

const within = (value: unknown, least: number, most: number): number | null =>
  typeof value === 'number' && Number.isFinite(value) && value >= least && value <= most ? value : null

/** `2026:05:14 10:42:16` as `2026-05-14T10:42:16`; null for anything that is no time, such as a clock never set. */
function localTime(value: unknown): string | null {
  const found = /^(\d{4}):(\d{2}):(\d{2}) (\d{2}):(\d{2}):(\d{2})$/.exec(text(value))
  if (found === null) return null
  const [, year, month, day, hour, minute, second] = found
  const time = `${year}-${month}-${day}T${hour}:${minute}:${second}`
  const moment = new Date(`${time}Z`)
  return Number.isNaN(moment.getTime()) || moment.toISOString().slice(0, 19) !== time ? null : time
}

const offset = (value: unknown): string | null => (/^[+-]\d{2}:\d{2}$/.test(text(value)) ? text(value) : null)

function camera(make: string, model: string): string {
  return (model.toLowerCase().startsWith(make.toLowerCase()) ? model : `${make} ${model}`).trim().slice(0, 400)
}

/** Reads a TIFF-structured EXIF block, or a whole TIFF file. Damaged EXIF says nothing; the picture still counts. */
export async function cameraWords(tiff: Uint8Array): Promise<CameraWords> {
  try {
    const said: Record<string, unknown> | undefined = await exifr.parse(tiff, {
      tiff: true,
      exif: true,
      gps: true,
      xmp: false,
      icc: false,
      iptc: false,
      makerNote: false,
      userComment: false,
      translateValues: false,
      reviveValues: false,
    })
    if (said === undefined) return silent
    const focal = within(said.FocalLength, 0, 100_000)
    const latitude = within(said.latitude, -90, 90)
    const longitude = within(said.longitude, -180, 180)
    const placed = latitude !== null && longitude !== null
    return {
      takenAt: localTime(said.DateTimeOriginal) ?? localTime(said.CreateDate) ?? localTime(said.ModifyDate),
      takenOffset: offset(said.OffsetTimeOriginal) ?? offset(said.OffsetTime),
      camera: camera(text(said.Make), text(said.Model)),
      focalLengthMm: focal === 0 ? null : focal,
      latitude: placed ? latitude : null,
      longitude: placed ? longitude : null,
    }
  } catch {
    return silent
  }
}
