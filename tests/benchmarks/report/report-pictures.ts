import { join } from 'node:path'

export const PHOTOGRAPHS = 200
export const SIZE = { widthPx: 1600, heightPx: 1067 } as const

export const picturePath = (folder: string, number: number): string =>
  join(folder, `${String(number).padStart(3, '0')}.jpg`)
